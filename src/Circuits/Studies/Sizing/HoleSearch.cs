using System.Collections.Immutable;
using MathNet.Numerics.RootFinding;

namespace Circuits.Studies.Sizing;

/// <summary>What a search for a diameter came to.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Millimetres">The diameter found, or where the time jumps.</param>
/// <param name="Solutions">How many brackets there were.</param>
internal readonly record struct HoleFound(SizeOutcome Outcome, double? Millimetres, int Solutions);

/// <summary>
/// Finds the diameter that gives a wanted time: a coarse scan for brackets, then Brent's method in the one nearest to the hole as it is.
/// A time that is never reached counts as longer than any.
/// </summary>
/// <param name="time">The time for a diameter, ms; null for never. Called once for each diameter.</param>
internal sealed class HoleSearch(Func<double, double?> time)
{
    private const int Points = 12;
    private const double Never = 1e5;
    private const double Accuracy = 1e-4;

    private readonly SortedDictionary<double, double?> tried = [];

    /// <summary>Everything that was tried, by rising diameter.</summary>
    public ImmutableArray<SizedHole> Tried => [.. tried.Select(pair => new SizedHole(pair.Key, pair.Value))];

    /// <summary>How close is close enough, ms.</summary>
    /// <param name="wanted">The time wanted, ms.</param>
    public static double Near(double wanted) => Math.Max(0.5, 0.002 * Math.Abs(wanted));

    /// <summary>The time for a diameter, ms; null for never.</summary>
    public double? At(double diameter)
    {
        if (!tried.TryGetValue(diameter, out var known)) tried[diameter] = known = time(diameter);
        return known;
    }

    /// <summary>Searches between two diameters.</summary>
    /// <param name="wanted">The time wanted, ms.</param>
    /// <param name="least">mm, above zero.</param>
    /// <param name="most">mm, above <paramref name="least"/>.</param>
    /// <param name="now">The diameter as it is, mm; null where there is none.</param>
    public HoleFound Find(double wanted, double least, double most, double? now)
    {
        var scan = Enumerable.Range(0, Points).Select(i => least * Math.Pow(most / least, i / (Points - 1.0))).ToList();
        if (now is { } here && here > least && here < most) scan.Add(here);
        scan.Sort();
        var errors = scan.Select(Error).ToList();
        if (errors.Max() - errors.Min() < Near(wanted) && Math.Abs(errors[0]) > Near(wanted)) return new HoleFound(SizeOutcome.Unaffected, null, 0);
        var brackets = Enumerable.Range(0, scan.Count - 1).Where(i => (errors[i] > 0) != (errors[i + 1] > 0)).ToList();
        if (brackets.Count == 0)
        {
            // A bound that gives the time itself is an answer too.
            var close = Enumerable.Range(0, scan.Count).Where(i => Math.Abs(errors[i]) <= Near(wanted)).ToList();
            return close.Count == 0 ? new HoleFound(SizeOutcome.OutOfRange, null, 0) : new HoleFound(SizeOutcome.Found, scan[close[0]], 1);
        }

        var from = now ?? scan[scan.Count / 2];
        var chosen = brackets.MinBy(i => Math.Abs(Math.Log(Math.Sqrt(scan[i] * scan[i + 1]) / from)));
        if (!Brent.TryFindRoot(Error, scan[chosen], scan[chosen + 1], Accuracy, 60, out var root)) root = scan[chosen + 1];
        return new HoleFound(Math.Abs(Error(root)) <= Near(wanted) ? SizeOutcome.Found : SizeOutcome.Jumps, root, brackets.Count);

        double Error(double diameter) => (At(diameter) ?? Never) - wanted;
    }
}
