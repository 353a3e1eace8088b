using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using MathNet.Numerics.Statistics;

namespace Circuits.Studies.Spread;

/// <summary>How many units to draw within the tolerances of their sizes.</summary>
/// <param name="Count">How many; at least one.</param>
/// <param name="Seed">Which; the same seed draws the same units, on any machine and any number of threads.</param>
public sealed record SpreadRequest(int Count, ulong Seed);

/// <summary>Where nine tenths of the samples lie.</summary>
/// <param name="Low">Five of a hundred lie below.</param>
/// <param name="Middle">Half lie below.</param>
/// <param name="High">Five of a hundred lie above.</param>
/// <param name="Missing">How many samples of a hundred have no such value.</param>
public readonly record struct SpreadRange(double Low, double Middle, double High, double Missing)
{
    /// <summary>The range of samples, or null when none has a value.</summary>
    /// <param name="samples">The samples; null where one has no value.</param>
    public static SpreadRange? Of(IReadOnlyCollection<double?> samples)
    {
        var known = samples.OfType<double>().Order().ToArray();
        if (known.Length == 0) return null;
        double At(double share) => SortedArrayStatistics.QuantileCustom(known, share, QuantileDefinition.R7);
        return new SpreadRange(At(0.05), At(0.5), At(0.95), 100.0 * (samples.Count - known.Length) / samples.Count);
    }
}

/// <summary>
/// Draws units within the tolerances of their sizes. Of a size whose limits alone are known, every value between them is as likely
/// as any other (JCGM 100:2008, the guide to the expression of uncertainty in measurement, 4.3.7; from memory), and sizes are drawn
/// independently of one another. A size that a revision takes over from another by <c>based-on</c> is one size.
/// </summary>
public static class SpreadSample
{
    /// <summary>Asks every sample. Samples are asked on several threads; the answers stand in their order.</summary>
    /// <param name="request">How many, and which.</param>
    /// <param name="read">Reads the unit with its sizes as drawn; null when it can no longer be read.</param>
    /// <param name="ask">What is asked of each; called by several threads.</param>
    /// <param name="stop">Breaks off.</param>
    public static ImmutableArray<TAnswer> Ask<TAnswer>(SpreadRequest request, Func<SizeDraw, Unit?> read, Func<Unit, TAnswer> ask, CancellationToken stop)
        where TAnswer : class
    {
        var answers = new TAnswer?[request.Count];
        Parallel.For(0, request.Count, new ParallelOptions { CancellationToken = stop }, sample =>
        {
            if (read((place, side) => Draw(request.Seed, sample, place, side)) is { } unit) answers[sample] = ask(unit);
        });
        return [.. answers.OfType<TAnswer>()];
    }

    /// <summary>Where a size comes out, from -1 to 1: of the seed, the sample and the size's own line alone.</summary>
    internal static double Draw(ulong seed, int sample, Place place, int side)
    {
        // The file's name without its folder, so that it does not matter where the program is started.
        var state = seed;
        foreach (var letter in place.File.AsSpan(place.File.LastIndexOf('/') + 1)) state = SplitMix.Mixed(state ^ letter);
        state = SplitMix.Mixed(state ^ (uint)sample);
        state = SplitMix.Mixed(state ^ (uint)place.Line);
        state = SplitMix.Mixed(state ^ (uint)((place.Column << 1) + side));
        return ((state >> 11) * (2.0 / (1UL << 53))) - 1;
    }
}
