using System.Buffers.Binary;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What the static solver and the judge see of a network, as numbers: networks that share one have the same static answers. Places in files,
/// revisions and sizes in words are not in it, nor is metal, nor what flow and time alone see (shapes of equal area, laps and rates of springs,
/// volumes, further outlets), which <see cref="SeenFlow"/> adds. Everything is taken apart member by member, so that one that is new does not compile
/// until somebody has said whether it counts.
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
        bytes.Add(network.Pump);
        new SeenElements(names, bytes).Each(network);
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
        var (_, kind, a, b, area, gate, element, _, _, _, _, _) = link;
        var (gateKind, gateElement, position) = gate;
        bytes.Add(((int)kind << 24) | ((int)gateKind << 16) | position);
        bytes.Add(gateElement);
        bytes.Add(a);
        bytes.Add(b);
        bytes.Add(names.Of(element));
        bytes.Add(area);
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
