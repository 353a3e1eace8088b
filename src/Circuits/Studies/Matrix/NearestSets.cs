using System.Collections.Immutable;
using Circuits.Judging;

namespace Circuits.Studies.Matrix;

/// <summary>The matched sets that an assembly is held against, with their gears.</summary>
/// <param name="Key">The same number for the same sets.</param>
/// <param name="Reference">The sets.</param>
/// <param name="Gears">Each gear of theirs.</param>
internal sealed record Nearest(UInt128 Key, Reference Reference, ImmutableArray<ReferenceBasis> Gears);

/// <summary>Finds the matched sets that share most parts with an assembly; each combination of sets is made ready once.</summary>
internal sealed class NearestSets(MatrixSpace space, UnitJudge judge)
{
    private readonly Dictionary<UInt128, Nearest> known = [];
    private readonly ByteList bytes = new();

    /// <summary>For each set, part and revision that is tried, whether the set has that revision.</summary>
    private readonly bool[][][] has =
        [.. judge.Matched.Select(set => space.Choices.Select((tried, part) => tried.Select(revision => ReferenceEquals(revision, set.Network.Assembly.Revisions[part])).ToArray()).ToArray())];

    private readonly int[] shared = new int[judge.Matched.Length];

    /// <summary>The sets nearest to an assembly.</summary>
    /// <param name="digits">Which of the revisions tried it has, part by part.</param>
    public Nearest Of(int[] digits)
    {
        var most = 0;
        for (var set = 0; set < has.Length; set++)
        {
            var count = 0;
            for (var part = 0; part < digits.Length; part++) count += has[set][part][digits[part]] ? 1 : 0;
            shared[set] = count;
            most = Math.Max(most, count);
        }

        bytes.Clear();
        for (var set = 0; set < has.Length; set++)
        {
            if (shared[set] == most) bytes.Add(set);
        }

        var key = Fingerprints.Key(bytes.Written);
        if (known.TryGetValue(key, out var nearest)) return nearest;
        var reference = new Reference([.. judge.Matched.Where((_, set) => shared[set] == most)]);
        return known[key] = new Nearest(key, reference, [.. space.Unit.Gears.Select((_, gear) => judge.BasisOf(reference, gear))]);
    }
}
