using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the size of a hole: <c>hole</c>, <c>slot</c> or <c>area</c>, or none of them.</summary>
internal static class ShapeReader
{
    private static readonly string[] Keys = ["hole", "slot", "area"];

    /// <summary>The shape; unsized when the file gives none.</summary>
    public static Shape Read(Fields fields)
    {
        var given = Keys.Where(fields.Has).ToList();
        if (given.Count > 1)
        {
            fields.Findings.Add(NameRules.NamedTwice.At(
                fields.PlaceOf(given[1]), $"{fields.Element} has both {given[0]} and {given[1]}", "Keep the one that is measured."));
        }

        var hole = Hole(fields);
        Shape? slot = Slot(fields);
        var area = fields.Area("area");
        var cutout = area is { } size ? new Shape.Cutout(size) : null;
        return hole ?? slot ?? cutout ?? (Shape)Shape.Unsized.Instance;
    }

    /// <summary>A round hole, or null when none is given.</summary>
    public static Shape? Hole(Fields fields) =>
        fields.Find("hole") is { } node
        && Sizes.Read(node, Dimension.Length, SizeRange.Positive, fields.What("hole"), fields.Findings) is { } diameter
            ? new Shape.Hole(new Length(diameter), ((YamlScalar)node).Text)
            : null;

    private static Shape.Slot? Slot(Fields fields)
    {
        if (fields.Find("slot") is not { } node) return null;
        var what = fields.What("slot");
        if (Nodes.Text(node, what, "a width and a length", fields.Findings) is not { } scalar) return null;
        var text = scalar.Text.AsSpan();
        var cross = text.IndexOf('x');
        if (cross < 0)
        {
            fields.Findings.Add(SizeRules.NotASize.At(
                node.Place, $"{what} must be a width and a length, found {Quote.Text(scalar.Text)}", "Write for example 4 x 14 mm."));
            return null;
        }

        var second = text[(cross + 1)..].Trim(' ');
        var first = text[..cross].Trim(' ');
        if (Side(second, scalar.Place, "", fields) is not { } right) return null;
        if (Side(first, scalar.Place, ToleranceText.Parse(second).Size.UnitText, fields) is not { } left) return null;
        return new Shape.Slot(new Length(Math.Min(left, right)), new Length(Math.Max(left, right)));
    }

    /// <summary>One side of a slot; the first may leave out its unit when the second has one.</summary>
    private static double? Side(ReadOnlySpan<char> text, Place place, string unit, Fields fields)
    {
        if (unit.Length > 0 && ToleranceText.Parse(text).Size.Problem == QuantityProblem.NoUnit) text = $"{text} {unit}";
        return Sizes.Read(text, place, Dimension.Length, SizeRange.Positive, fields.What("slot"), fields.Findings);
    }
}
