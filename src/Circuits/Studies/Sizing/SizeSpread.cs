using System.Collections.Immutable;
using Circuits.Studies.Spread;

namespace Circuits.Studies.Sizing;

/// <summary>A hole, and where the times lie that it gives in units drawn within the tolerances of their sizes.</summary>
/// <param name="Hole">The hole, of just its diameter.</param>
/// <param name="Ms">The range; null where it comes to the time in none of them.</param>
public sealed record SizedRange(SizedHole Hole, SpreadRange? Ms);

/// <summary>How far the times of a hole spread.</summary>
/// <param name="Request">How many units were drawn, and which.</param>
/// <param name="Sizes">How many sizes of the file carry a tolerance.</param>
/// <param name="Holes">The hole found and the number drills beside it; the hole as it is where none was found.</param>
public sealed record SizeSpread(SpreadRequest Request, int Sizes, ImmutableArray<SizedRange> Holes)
{
    /// <summary>Gathers what samples gave.</summary>
    /// <param name="request">How many, and which.</param>
    /// <param name="sizes">How many sizes carry a tolerance.</param>
    /// <param name="holes">The holes.</param>
    /// <param name="samples">For each sample, the time that each hole gives.</param>
    public static SizeSpread Of(SpreadRequest request, int sizes, ImmutableArray<SizedHole> holes, ImmutableArray<SizeTimes> samples) => new(
        request, sizes, [.. holes.Select((hole, i) => new SizedRange(hole, SpreadRange.Of([.. samples.Select(sample => sample.Ms[i])])))]);
}

/// <summary>The time that each hole gives in one unit.</summary>
/// <param name="Ms">The times, ms; null where it never comes to it.</param>
public sealed record SizeTimes(ImmutableArray<double?> Ms);
