using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Holds numbers to their ranges.</summary>
internal static class RangeCheck
{
    /// <summary>Whether a number is possible; a finding when it is not, or is unlikely.</summary>
    /// <param name="value">The number, in base units; not finite counts as impossible.</param>
    /// <param name="text">It as written.</param>
    /// <param name="unit">Its unit; null where it has none.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="range">What makes sense.</param>
    /// <param name="what">What it belongs to.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static bool Holds(double value, ReadOnlySpan<char> text, MeasureUnit? unit, Place place, PlausibleRange range, What what, FindingList findings)
    {
        if (!range.IsPossible(value))
        {
            findings.Add(SizeRules.SizeOutOfRange.At(
                place, $"{what} must be {range.Must(value, unit)}, found {Quote.Text(text.ToString())}{range.Reason(value)}", "Check the number, its unit and its decimal point."));
            return false;
        }

        if (!range.IsUsual(value))
        {
            findings.Add(SizeRules.UnlikelySize.At(
                place, $"{what} is unlikely: {Quote.Text(text.ToString())} where {range.Text(range.Usual!.Value, unit)} is usual; {range.WhyUsual}",
                "Check the number, its unit and its decimal point. If the part is so, leave it."));
        }

        return true;
    }
}
