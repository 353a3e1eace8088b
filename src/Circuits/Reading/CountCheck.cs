using System.Globalization;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Holds how many of a kind there are to what makes sense.</summary>
internal static class CountCheck
{
    /// <summary>A finding at the first one that is too many.</summary>
    /// <typeparam name="T">What is counted.</typeparam>
    /// <param name="all">All of them.</param>
    /// <param name="range">How many make sense.</param>
    /// <param name="what">What they belong to, in the plural: <c>gears</c>, <c>joint front: sheets</c>.</param>
    /// <param name="place">Where one is written.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static void Check<T>(IReadOnlyList<T> all, PlausibleRange range, What what, Func<T, Place> place, FindingList findings)
    {
        if (all.Count > range.Possible.Most)
        {
            findings.Add(SizeRules.SizeOutOfRange.At(
                place(all[(int)range.Possible.Most]), $"{what} are {Number(all.Count)} and must be {Number(range.Possible.Most)} at most: {range.Why}", "Is this a circuit file? Leave out what does not belong to the unit."));
        }
        else if (range.Usual is { } usual && all.Count > usual.Most)
        {
            findings.Add(SizeRules.UnlikelySize.At(
                place(all[(int)usual.Most]), $"{what} are unlikely: {Number(all.Count)} where {Number(usual.Most)} at most is usual; {range.WhyUsual}", "If the unit is so, leave it."));
        }
    }

    private static string Number(double count) => count.ToString("0", CultureInfo.InvariantCulture);
}
