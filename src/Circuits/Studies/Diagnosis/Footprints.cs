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
        var before = NetworkPieces.Of(NetworkBuilder.Build(sound));
        var numbers = new Dictionary<string, int>();
        ImmutableArray<List<int>> nodes = [.. faults.Select(fault => Numbered(before, NetworkPieces.Of(NetworkBuilder.Build(fault.In(sound))), numbers))];
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
}
