using System.Collections.Immutable;
using System.Numerics;

namespace Circuits.Studies.Diagnosis;

/// <summary>Finds what of the evidence cannot be explained together, when nothing explains all of it.</summary>
internal static class Conflict
{
    /// <summary>Of more pieces the sets are too many to try.</summary>
    private const int MostEvidence = 62;
    private const int LargestSet = 4;

    /// <summary>
    /// A smallest set of which no candidate explains every piece: each candidate contradicts one of it, so it meets what each contradicts. Of equally
    /// small ones the first in the order of the evidence; empty where none of up to four pieces is found.
    /// </summary>
    /// <param name="evidence">The evidence.</param>
    /// <param name="candidates">How well each piece fits each candidate; 0 contradicts.</param>
    public static ImmutableArray<Evidence> Of(ImmutableArray<Evidence> evidence, IEnumerable<ImmutableArray<double>> candidates)
    {
        if (evidence.Length > MostEvidence) return [];

        // What a candidate contradicts as bits; of two of which one holds the other, only the smaller counts.
        var all = candidates.Select(degrees => degrees.Select((degree, i) => degree > 0 ? 0UL : 1UL << i).Aggregate(0UL, (bits, bit) => bits | bit))
            .Distinct().OrderBy(BitOperations.PopCount).ThenBy(bits => bits).ToList();
        var against = new List<ulong>();
        foreach (var bits in all.Where(bits => !against.Exists(less => (less & bits) == less))) against.Add(bits);
        for (var size = 1; size <= Math.Min(LargestSet, evidence.Length); size++)
        {
            if (Find(against, 0UL, 0, size, evidence.Length) is { } found) return [.. evidence.Where((_, i) => (found & (1UL << i)) != 0)];
        }

        return [];
    }

    private static ulong? Find(List<ulong> against, ulong chosen, int from, int left, int count)
    {
        if (left == 0) return against.TrueForAll(bits => (bits & chosen) != 0) ? chosen : null;
        for (var i = from; i <= count - left; i++)
        {
            if (Find(against, chosen | (1UL << i), i + 1, left - 1, count) is { } found) return found;
        }

        return null;
    }
}
