using System.Collections;
using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// Which passages each fault touches: the ends of everything that the network with the fault has other than the network without. Two faults that
/// do something only together (both ways into one passage shut, a leak into a passage whose drain is shut) have a passage in common.
/// </summary>
internal sealed class Footprints
{
    private readonly ImmutableArray<BitArray> touched;

    private Footprints(ImmutableArray<BitArray> touched) => this.touched = touched;

    /// <summary>The footprints of faults.</summary>
    /// <param name="sound">The assembly without any.</param>
    /// <param name="faults">The faults.</param>
    public static Footprints Of(Assembly sound, ImmutableArray<Fault> faults)
    {
        var before = Pieces(NetworkBuilder.Build(sound));
        var numbers = new Dictionary<string, int>();
        ImmutableArray<List<int>> nodes = [.. faults.Select(fault => Numbered(before, Pieces(NetworkBuilder.Build(fault.In(sound))), numbers))];
        return new Footprints([.. nodes.Select(some => Bits(some, numbers.Count))]);
    }

    /// <summary>Whether two faults touch a common passage; the sump does not count.</summary>
    /// <param name="a">One fault's number.</param>
    /// <param name="b">The other's.</param>
    public bool Meet(int a, int b)
    {
        var one = touched[a];
        var other = touched[b];
        for (var i = 0; i < one.Length; i++)
        {
            if (one[i] && other[i]) return true;
        }

        return false;
    }

    private static BitArray Bits(List<int> set, int length)
    {
        var bits = new BitArray(length);
        foreach (var number in set) bits[number] = true;
        return bits;
    }

    private static List<int> Numbered(Dictionary<string, string[]> before, Dictionary<string, string[]> after, Dictionary<string, int> numbers)
    {
        var changed = before.Where(piece => !after.ContainsKey(piece.Key)).Concat(after.Where(piece => !before.ContainsKey(piece.Key)));
        var found = new List<int>();
        foreach (var name in changed.SelectMany(piece => piece.Value).Distinct())
        {
            if (!numbers.TryGetValue(name, out var number)) numbers[name] = number = numbers.Count;
            found.Add(number);
        }

        return found;
    }

    /// <summary>Everything that the network has, in words that tell it from anything else, with the nodes that it lies at.</summary>
    private static Dictionary<string, string[]> Pieces(Network network)
    {
        var pieces = new Dictionary<string, string[]>();
        foreach (var link in network.Links.Where(link => link.Gate.Kind != GateKind.Shut))
        {
            // Two that are alike in everything count one by one: without one of them the last is missing.
            var words = FormattableString.Invariant($"{link.Kind} {link.Gate.Kind} {link.Gate.Position} {link.Element} {Name(link.A)} {Name(link.B)} {link.SquareMillimetres}");
            for (var copy = 0; !pieces.TryAdd(FormattableString.Invariant($"{words} {copy}"), Names([link.A, link.B])); copy++) ;
        }

        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            ImmutableArray<Signal> signals = [.. spool.MovedBy, .. spool.HeldBy];
            var ports = network.Links.Where(link => link.Gate.Kind == GateKind.Valve && link.Gate.Element == i).SelectMany(link => new[] { link.A, link.B });
            pieces[FormattableString.Invariant($"{spool.Name} {spool.Springs} {spool.Source.Stuck} {Words(spool.MovedBy)} {Words(spool.HeldBy)}")] =
                Names([.. ports, .. signals.Select(signal => signal.Node)]);
        }

        foreach (var regulator in network.Regulators)
        {
            pieces[FormattableString.Invariant($"{regulator.Name} {regulator.Kind} {regulator.Spring} {regulator.SquareMillimetres} {Words(regulator.SetBy)} {regulator.Solenoid?.Fault}")] =
                Names([regulator.From, regulator.Out, regulator.To, .. regulator.SetBy.Select(signal => signal.Node)]);
        }

        foreach (var ball in network.Balls)
            pieces[FormattableString.Invariant($"{ball.Name} {Name(ball.Pocket)} {ball.Seats.Length}")] = Names([ball.Pocket]);
        foreach (var clutch in network.Clutches)
            pieces[FormattableString.Invariant($"{clutch.Clutch.Name} {Name(clutch.Chamber)} {Name(clutch.ReleaseChamber)} {clutch.ReleaseShare}")] = Names([clutch.Chamber, clutch.ReleaseChamber]);
        return pieces;

        string Name(int node) => node < 0 ? "" : network.Nodes[node].Name;

        string Words(ImmutableArray<Signal> signals) => string.Join(',', signals.Select(signal => FormattableString.Invariant($"{Name(signal.Node)}*{signal.Factor}")));

        string[] Names(IEnumerable<int> nodes) => [.. nodes.Where(node => node > 0).Select(Name).Distinct()];
    }
}
