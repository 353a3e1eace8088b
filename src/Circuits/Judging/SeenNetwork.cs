using System.Buffers.Binary;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What solver and judge see of a network, as numbers: networks that share one have the same answers. Places in files, revisions and
/// sizes in words are not in it, nor is metal.
/// </summary>
internal sealed class SeenNetwork
{
    /// <summary>Bytes that a link takes.</summary>
    private const int LinkSize = (5 * sizeof(int)) + sizeof(double);

    private SeenNetwork(UInt128 whole, UInt128[] gears)
    {
        Whole = whole;
        Gears = gears;
    }

    /// <summary>The whole network with what every gear sets.</summary>
    public UInt128 Whole { get; }

    /// <summary>For each gear, what is left of the network when what that gear keeps shut is taken away.</summary>
    public UInt128[] Gears { get; }

    /// <summary>Works the numbers out.</summary>
    /// <param name="network">The network.</param>
    /// <param name="inputs">What each gear sets.</param>
    /// <param name="names">Numbers of names; shared by all networks that are compared.</param>
    /// <param name="bytes">A work array.</param>
    public static SeenNetwork Of(Network network, ImmutableArray<GearInputs> inputs, NameNumbers names, ByteList bytes)
    {
        bytes.Clear();
        foreach (var link in network.Links) AddLink(link, names, bytes);
        ReadOnlySpan<byte> links = bytes.Written.ToArray();
        bytes.Clear();
        AddElements(network, names, bytes);
        var elements = Fingerprints.Key(bytes.Written);
        var gears = new UInt128[inputs.Length];
        for (var i = 0; i < gears.Length; i++)
        {
            bytes.Clear();
            bytes.Add(elements);
            AddInputs(inputs[i], bytes);
            AddLinks(network, inputs[i], links, bytes);
            gears[i] = Fingerprints.Key(bytes.Written);
        }

        bytes.Clear();
        bytes.Add(elements);
        AddLinks(network, null, links, bytes);
        foreach (var gear in gears) bytes.Add(gear);
        return new SeenNetwork(Fingerprints.Key(bytes.Written), gears);
    }

    private static void AddElements(Network network, NameNumbers names, ByteList bytes)
    {
        bytes.Add(network.Pump);
        bytes.Add(network.Nodes.Length);
        foreach (var node in network.Nodes)
        {
            bytes.Add((int)node.Kind);
            bytes.Add(names.Of(node.Name));
            bytes.Add(node.Circuit is null ? -1 : names.Of(node.Circuit));
        }

        foreach (var spool in network.Spools)
        {
            bytes.Add(names.Of(spool.Name));
            bytes.Add(spool.Springs);
            bytes.Add(spool.Source.Stuck is { } stuck ? (int)stuck : -1);
            AddSignals(spool.MovedBy, bytes);
            AddSignals(spool.HeldBy, bytes);
        }

        foreach (var ball in network.Balls)
        {
            bytes.Add(ball.Pocket);
            bytes.Add(ball.Seats.Length);
        }

        foreach (var regulator in network.Regulators)
        {
            bytes.Add((int)regulator.Kind);
            bytes.Add(regulator.From);
            bytes.Add(regulator.Out);
            bytes.Add(regulator.To);
            bytes.Add(regulator.Spring);
            bytes.Add(regulator.SquareMillimetres);
            AddSignals(regulator.SetBy, bytes);
        }

        foreach (var element in network.Switches) bytes.Add(names.Of(element.Name));
        foreach (var clutch in network.Clutches)
        {
            bytes.Add(clutch.Chamber);
            bytes.Add(clutch.ReleaseChamber);
            bytes.Add(clutch.ReleaseShare);
            bytes.Add(clutch.Clutch.Fill?.Millilitres ?? -1);
        }

        foreach (var accumulator in network.Accumulators)
        {
            bytes.Add(accumulator.Node);
            bytes.Add(accumulator.Millilitres);
        }
    }

    private static void AddInputs(GearInputs inputs, ByteList bytes)
    {
        bytes.Add(inputs.Lever);
        foreach (var fed in inputs.Fed) bytes.Add(fed ? 1 : 0);
        foreach (var set in inputs.Set) bytes.Add(set);
        foreach (var (node, kilopascals) in inputs.Fixed)
        {
            bytes.Add(node);
            bytes.Add(kilopascals);
        }
    }

    /// <summary>Adds the links that a gear may open, each of which stands ready at its place among the links.</summary>
    private static void AddLinks(Network network, GearInputs? inputs, ReadOnlySpan<byte> links, ByteList bytes)
    {
        foreach (var link in network.Links)
        {
            var gate = link.Gate;
            switch (gate.Kind)
            {
                case GateKind.Shut:
                case GateKind.Lever when inputs is not null && gate.Position != inputs.Lever:
                case GateKind.Solenoid when inputs is not null && inputs.Fed[gate.Element] != (gate.Position == 1):
                    continue;
            }

            bytes.Add(links.Slice(link.Index * LinkSize, LinkSize));
        }
    }

    private static void AddLink(Link link, NameNumbers names, ByteList bytes)
    {
        bytes.Add(((int)link.Kind << 24) | ((int)link.Gate.Kind << 16) | link.Gate.Position);
        bytes.Add(link.Gate.Element);
        bytes.Add(link.A);
        bytes.Add(link.B);
        bytes.Add(names.Of(link.Element));
        bytes.Add(link.SquareMillimetres);
    }

    private static void AddSignals(ImmutableArray<Signal> signals, ByteList bytes)
    {
        bytes.Add(signals.Length);
        foreach (var signal in signals)
        {
            bytes.Add(signal.Node);
            bytes.Add(signal.Factor);
        }
    }
}

/// <summary>Gives each name a number; for use by several threads.</summary>
internal sealed class NameNumbers
{
    private readonly ConcurrentDictionary<string, int> numbers = new();

    public int Of(string name)
    {
        if (numbers.TryGetValue(name, out var number)) return number;
        lock (numbers) return numbers.GetOrAdd(name, numbers.Count);
    }
}

/// <summary>Bytes one after the other.</summary>
internal sealed class ByteList
{
    private byte[] bytes = new byte[1 << 14];
    private int count;

    public ReadOnlySpan<byte> Written => bytes.AsSpan(0, count);

    public void Clear() => count = 0;

    public void Add(int value) => BinaryPrimitives.WriteInt32LittleEndian(Take(sizeof(int)), value);

    public void Add(double value) => BinaryPrimitives.WriteDoubleLittleEndian(Take(sizeof(double)), value);

    public void Add(ReadOnlySpan<byte> value) => value.CopyTo(Take(value.Length));

    public void Add(UInt128 value) => BinaryPrimitives.WriteUInt128LittleEndian(Take(16), value);

    private Span<byte> Take(int size)
    {
        if (count + size > bytes.Length) Array.Resize(ref bytes, 2 * bytes.Length);
        count += size;
        return bytes.AsSpan(count - size, size);
    }
}
