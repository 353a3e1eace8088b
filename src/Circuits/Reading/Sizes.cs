using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Which numbers make sense for a size.</summary>
internal enum SizeRange
{
    /// <summary>More than zero.</summary>
    Positive,

    /// <summary>Zero or more.</summary>
    ZeroOrMore,

    /// <summary>Anything but zero, negative too.</summary>
    NotZero,

    /// <summary>A temperature above absolute zero.</summary>
    AboveAbsoluteZero,

    /// <summary>More than zero, one at most.</summary>
    Fraction,

    /// <summary>Any number.</summary>
    Any,
}

/// <summary>Reads sizes and plain numbers.</summary>
internal static class Sizes
{
    private const double Least = 1e-9;
    private const double Most = 1e9;

    /// <summary>The size in base units, or null with a finding.</summary>
    public static double? Read(YamlNode node, Dimension dimension, SizeRange range, What what, FindingList findings) =>
        Nodes.Text(node, what, dimension.Name(), findings, $"Write for example {dimension.Example()}.") is { } scalar
            ? Read(scalar.Text, node.Place, dimension, range, what, findings)
            : null;

    /// <summary>The size in base units, or null with a finding.</summary>
    public static double? Read(
        ReadOnlySpan<char> text, Place place, Dimension dimension, SizeRange range, What what, FindingList findings)
    {
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
                place, $"{what} must be {dimension.Name()}, found {unit.Dimension.Name()} ({text})", $"Write for example {dimension.Example()}."));
            return null;
        }

        return InRange(size.Value, text, place, range, what, findings) is { } value && Tolerances.Check(toleranced, range, place, what, findings) is not null
            ? value
            : null;
    }

    /// <summary>A plain number, or null with a finding.</summary>
    public static double? Number(YamlNode node, SizeRange range, What what, FindingList findings)
    {
        if (Nodes.Text(node, what, "a number", findings) is not { } scalar) return null;
        var toleranced = ToleranceText.Parse(scalar.Text);
        var size = toleranced.Size;
        if (!Tolerances.IsReadable(toleranced, node.Place, what, findings)) return null;
        if (size.Problem is QuantityProblem.NoUnit or QuantityProblem.NotFinite)
        {
            var value = size.Problem == QuantityProblem.NoUnit ? size.Number : double.PositiveInfinity;
            return InRange(value, scalar.Text, node.Place, range, what, findings) is { } number
                && Tolerances.Check(toleranced, range, node.Place, what, findings) is not null
                    ? number
                    : null;
        }

        var help = size.Problem == QuantityProblem.DecimalComma ? "Write a decimal point." : "Write it without a unit.";
        findings.Add(ShapeRules.WrongType.At(node.Place, $"{what} must be a plain number, found {Quote.Text(scalar.Text)}", help));
        return null;
    }

    private static double? InRange(
        double value, ReadOnlySpan<char> text, Place place, SizeRange range, What what, FindingList findings)
    {
        var (holds, must) = range switch
        {
            SizeRange.Positive => (value > 0, "more than 0"),
            SizeRange.ZeroOrMore => (value >= 0, "0 or more"),
            SizeRange.NotZero => (value != 0, "other than 0"),
            SizeRange.AboveAbsoluteZero => (value > MeasureUnit.AbsoluteZero, "above absolute zero (-273.15 degC)"),
            SizeRange.Fraction => (value is > 0 and <= 1, "more than 0 and at most 1 (100 %)"),
            _ => (true, ""),
        };
        if (holds && double.IsFinite(value) && Math.Abs(value) <= Most && (value == 0 || Math.Abs(value) >= Least)) return value;
        if (holds) must = "within reason (1e-9 to 1e9 base units)";
        findings.Add(SizeRules.SizeOutOfRange.At(
            place, $"{what} must be {must}, found {Quote.Text(text.ToString())}", "Correct the number or its unit."));
        return null;
    }
}
