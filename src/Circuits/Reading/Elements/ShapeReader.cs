using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the size of a hole: <c>hole</c>, <c>slot</c> or <c>area</c>, or none of them.</summary>
internal static class ShapeReader
{
    private static readonly string[] Keys = ["hole", "slot", "area"];
    private static readonly string[] GapKeys = ["around", "width", "eccentricity"];

    /// <summary>The shape; unsized when the file gives none.</summary>
    public static Shape Read(Fields fields) => Read(fields, OpeningRanges.SlotSide);

    private static Shape Read(Fields fields, PlausibleRange side)
    {
        var given = Keys.Where(fields.Has).ToList();
        if (given.Count > 1)
        {
            fields.Findings.Add(NameRules.NamedTwice.At(
                fields.PlaceOf(given[1]), $"{fields.Element} has both {given[0]} and {given[1]}", "Keep the one that is measured."));
        }

        var hole = Hole(fields);
        Shape? slot = Slot(fields, side);
        var area = fields.Area("area", OpeningRanges.Area);
        var cutout = area is { } size ? new Shape.Cutout(size) : null;
        return hole ?? slot ?? cutout ?? (Shape)Shape.Unsized.Instance;
    }

    /// <summary>The shape of what joins two passages inside a part: a hole may be deep there, and a leak a gap.</summary>
    public static Shape ReadInside(Fields fields)
    {
        var shape = Read(fields, OpeningRanges.CrackSide);
        var length = fields.Length("length", OpeningRanges.Length);
        if (fields.Has("gap")) return Gap(fields, length) ?? shape;
        foreach (var key in GapKeys.Where(fields.Has))
            Misplaced(fields, key, "belongs to a gap", "Add gap: 0.02 mm, or delete it.");
        if (shape is Shape.Hole hole) return hole with { Depth = length };
        if (fields.Has("length")) Misplaced(fields, "length", "belongs to a hole or a gap", "Add hole: 2 mm, or gap: 0.02 mm, or delete it.");
        return shape;
    }

    private static Shape.Gap? Gap(Fields fields, Length? length)
    {
        foreach (var key in Keys.Where(fields.Has))
            fields.Findings.Add(NameRules.NamedTwice.At(fields.PlaceOf(key), $"{fields.Element} has both gap and {key}", "Keep the one that is measured."));
        var (gap, around, width, eccentricity) =
            (fields.Length("gap", OpeningRanges.Gap), fields.Length("around", OpeningRanges.Around), fields.Length("width", OpeningRanges.Width), fields.Fraction("eccentricity", OpeningRanges.Eccentricity));
        length = length.Needed(fields, "length");
        if (fields.Has("around") == fields.Has("width"))
        {
            var what = fields.Has("around") ? "both around and width" : "neither around nor width";
            fields.Findings.Add(ShapeRules.MissingKey.At(
                fields.PlaceOf("gap"), $"{fields.Element} is a gap with {what}", "Write around: 12 mm for the bore of a spool, width: 30 mm for a flat gap."));
        }

        if (fields.Has("eccentricity") && !fields.Has("around")) Misplaced(fields, "eccentricity", "belongs to a gap with around", "Delete it.");
        if (gap is not { } height || length is not { } along) return null;
        if (around is { } diameter) return new Shape.RoundGap(diameter, height, along, eccentricity ?? 0);
        return width is { } across ? new Shape.FlatGap(across, height, along) : null;
    }

    private static void Misplaced(Fields fields, string key, string why, string help) =>
        fields.Findings.Add(ShapeRules.MisplacedKey.At(fields.PlaceOf(key), $"{fields.What(key)} {why}", help));

    /// <summary>A round hole, or null when none is given.</summary>
    public static Shape? Hole(Fields fields) =>
        fields.Find("hole") is { } node
        && Sizes.Read(node, OpeningRanges.Hole, fields.What("hole"), fields.Findings) is { } diameter
            ? new Shape.Hole(new Length(diameter), ((YamlScalar)node).Text)
            : null;

    private static Shape.Slot? Slot(Fields fields, PlausibleRange range)
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
        if (Side(second, scalar.Place, "", range, fields) is not { } right) return null;
        if (Side(first, scalar.Place, ToleranceText.Parse(second).Size.UnitText, range, fields) is not { } left) return null;
        return new Shape.Slot(new Length(Math.Min(left, right)), new Length(Math.Max(left, right)));
    }

    /// <summary>One side of a slot; the first may leave out its unit when the second has one.</summary>
    private static double? Side(ReadOnlySpan<char> text, Place place, string unit, PlausibleRange range, Fields fields)
    {
        if (unit.Length > 0 && ToleranceText.Parse(text).Size.Problem == QuantityProblem.NoUnit) text = $"{text} {unit}";
        return Sizes.Read(text, place, range, fields.What("slot"), fields.Findings);
    }
}
