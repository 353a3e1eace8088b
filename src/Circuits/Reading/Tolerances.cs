using System.Globalization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Sizes that carry a tolerance.</summary>
internal static class Tolerances
{
    /// <summary>A node in which every size with a tolerance is another one within it; the node itself where there is none.</summary>
    /// <param name="node">The node.</param>
    /// <param name="draw">Where each size comes out.</param>
    public static YamlNode Drawn(YamlNode node, SizeDraw draw)
    {
        switch (node)
        {
            case YamlScalar scalar when Has(scalar.Text):
                return new YamlScalar(Drawn(scalar, draw), false, scalar.Place);
            case YamlSequence sequence:
                return new YamlSequence([.. sequence.Items.Select(item => Drawn(item, draw))], sequence.Place);
            case YamlMapping mapping:
                return new YamlMapping([.. mapping.Entries.Select(entry => entry with { Value = Drawn(entry.Value, draw) })], mapping.Place);
            default:
                return node;
        }
    }

    /// <summary>Whether a text may be a size with a tolerance.</summary>
    public static bool Has(ReadOnlySpan<char> text) => text.Contains('±') || text.Contains("+-", StringComparison.Ordinal);

    /// <summary>Whether what stands behind the sign is a size at all; a finding when it is not.</summary>
    public static bool IsReadable(ToleranceText size, Place place, What what, FindingList findings)
    {
        if (size.Tolerance is null or { Problem: QuantityProblem.None or QuantityProblem.NoUnit }) return true;
        findings.Add(NoTolerance(place, what));
        return false;
    }

    /// <summary>Whether a size makes sense from one end of its tolerance to the other; a finding when it does not.</summary>
    /// <param name="size">The size and its tolerance.</param>
    /// <param name="range">Which numbers make sense for the size.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="what">What it belongs to.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static bool Check(ToleranceText size, PlausibleRange range, Place place, What what, FindingList findings)
    {
        var plus = size.Plus;
        if (double.IsNaN(plus))
        {
            findings.Add(NoTolerance(place, what));
            return false;
        }

        var (least, most) = (size.Size.Value - plus, size.Size.Value + plus);
        if (plus >= 0 && range.IsPossible(least) && range.IsPossible(most)) return true;
        var problem = plus < 0 ? "has a tolerance below 0"
            : least <= 0 && range.Possible.Least >= 0 ? "has a tolerance as large as the size itself"
            : $"reaches beyond {range.Text(range.Possible, size.Size.Unit)} within its tolerance: {range.Why}";
        findings.Add(SizeRules.SizeOutOfRange.At(place, $"{what} {problem}", "Correct the size or its tolerance."));
        return false;
    }

    private static Finding NoTolerance(Place place, What what) => SizeRules.NotASize.At(
        place, $"{what} has a tolerance that is none of such a size", "Write it in the unit of the size, or in percent: 2.10 +- 0.05 mm, 40 N +- 10 %.");

    private static string Drawn(YamlScalar scalar, SizeDraw draw)
    {
        var cross = scalar.Text.IndexOf('x');
        if (cross < 0) return Side(scalar.Text, 0);

        // The first side of a slot may leave its unit to the second.
        var (first, second) = (scalar.Text[..cross], scalar.Text[(cross + 1)..]);
        if (ToleranceText.Parse(first).Size.Problem == QuantityProblem.NoUnit) first = $"{first.TrimEnd()} {ToleranceText.Parse(second).Size.UnitText}";
        return $"{Side(first, 0)} x {Side(second, 1)}";

        string Side(string text, int side)
        {
            // What is no such size is reported when it is read.
            var read = ToleranceText.Parse(text);
            if (read.Tolerance is null || !double.IsFinite(read.Plus) || read.Size.Problem is not (QuantityProblem.None or QuantityProblem.NoUnit)) return text.Trim();
            var value = read.Size.Value + (read.Plus * draw(scalar.Place, side));
            return read.Size.Unit is { } own
                ? string.Create(CultureInfo.InvariantCulture, $"{own.FromBase(value):R} {own.Symbol}")
                : value.ToString("R", CultureInfo.InvariantCulture);
        }
    }
}
