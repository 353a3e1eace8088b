using System.Globalization;
using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads sizes and plain numbers, each held to its range.</summary>
internal static class Sizes
{
    /// <summary>The size in base units, or null with a finding.</summary>
    public static double? Read(YamlNode node, PlausibleRange range, What what, FindingList findings)
    {
        var dimension = DimensionOf(range);
        return Nodes.Text(node, what, dimension.Name(), findings, $"Write for example {dimension.Example()}.") is { } scalar
            ? Read(scalar.Text, node.Place, range, what, findings)
            : null;
    }

    /// <summary>The size in base units, or null with a finding.</summary>
    public static double? Read(ReadOnlySpan<char> text, Place place, PlausibleRange range, What what, FindingList findings)
    {
        var dimension = DimensionOf(range);
        var toleranced = ToleranceText.Parse(text);
        var size = toleranced.Size;
        if (!Tolerances.IsReadable(toleranced, place, what, findings)) return null;
        if (size.Problem == QuantityProblem.NoUnit && dimension == Dimension.Fraction) size = size with { Problem = QuantityProblem.None };
        if (size.Problem != QuantityProblem.None)
        {
            findings.Add(SizeFault.Finding(size, text.ToString(), place, dimension, what));
            return null;
        }

        if (size.Unit is { } unit && unit.Dimension != dimension)
        {
            findings.Add(SizeRules.WrongDimension.At(
                place, $"{what} must be {dimension.Name()}, found {unit.Dimension.Name()} ({text.ToString()})", $"Write for example {dimension.Example()}."));
            return null;
        }

        return RangeCheck.Holds(size.Value, text, size.Unit, place, range, what, findings) && Tolerances.Check(toleranced, range, place, what, findings)
            ? size.Value
            : null;
    }

    /// <summary>A plain number, or null with a finding.</summary>
    public static double? Number(YamlNode node, PlausibleRange range, What what, FindingList findings)
    {
        if (Nodes.Text(node, what, "a number", findings) is not { } scalar) return null;
        var toleranced = ToleranceText.Parse(scalar.Text);
        var size = toleranced.Size;
        if (!Tolerances.IsReadable(toleranced, node.Place, what, findings)) return null;
        if (size.Problem is QuantityProblem.NoUnit or QuantityProblem.NotFinite)
        {
            var value = size.Problem == QuantityProblem.NoUnit ? size.Number : double.PositiveInfinity;
            return RangeCheck.Holds(value, scalar.Text, null, node.Place, range, what, findings) && Tolerances.Check(toleranced, range, node.Place, what, findings)
                ? value
                : null;
        }

        var help = size.Problem == QuantityProblem.DecimalComma ? "Write a decimal point." : "Write it without a unit.";
        findings.Add(ShapeRules.WrongType.At(node.Place, $"{what} must be a plain number, found {Quote.Text(scalar.Text)}", help));
        return null;
    }

    /// <summary>A whole number, or null with a finding.</summary>
    public static int? Count(YamlNode node, PlausibleRange range, What what, FindingList findings)
    {
        if (Nodes.Text(node, what, "a whole number", findings) is not { } scalar) return null;
        if (!int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count))
            Nodes.Wrong(node, what, "a whole number", "Write digits alone.", findings);
        else if (RangeCheck.Holds(count, scalar.Text, null, node.Place, range, what, findings))
            return count;
        return null;
    }

    private static Dimension DimensionOf(PlausibleRange range) => range.Dimension ?? throw new ArgumentException("A plain number is read by Number or Count.", nameof(range));
}
