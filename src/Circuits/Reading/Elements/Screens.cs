using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Screens(YamlMapping content) => revision = revision with
    {
        Screens = Named(content, "screens", "screen", (key, fields) => ScreenReader.Read(key, fields, part), screen => (screen.Name, screen.Place)),
    };
}

internal sealed partial class Sections
{
    public void Screens(List<Section> all) => all.Add(new("screens", "screen"));
}

/// <summary>Reads screens and filters.</summary>
internal static class ScreenReader
{
    /// <summary>The screen, or null with findings.</summary>
    public static Screen? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var from = fields.Need("from") is { } feed ? part.Passages.Find(feed, fields.What("from")) : null;
        var to = fields.Need("to") is { } node ? part.Passages.Find(node, fields.What("to")) : null;
        var mesh = Size(fields);
        var clogged = fields.Fraction("clogged", ScreenRanges.Clogged) ?? 0;
        var bypass = Bypass(fields);
        if (from is not { } before || to is not { } behind) return null;
        if (before.Name == behind.Name)
            part.Findings.Add(NameRules.NamedTwice.At(behind.Place, $"{fields.Element} has {behind.Name} on both sides of its mesh", "Name two passages."));
        return new Screen(key.Text, before, behind, mesh, key.Place) { Clogged = clogged, Bypass = bypass };
    }

    private static Bypass? Bypass(Fields screen)
    {
        if (screen.Find("bypass") is not { } node) return null;
        if (Fields.Open(node, $"{screen.Element}: bypass", screen.PlaceOf("bypass"), screen.Findings) is not { } fields) return null;
        var opens = fields.Pressure("opens-at", ScreenRanges.OpensAt).Needed(fields, "opens-at");
        var hole = Size(fields);
        fields.Close();
        return opens is { } pressure ? new Bypass(pressure, hole, fields.Place) : null;
    }

    /// <summary>A hole, by its diameter or its area.</summary>
    private static Shape Size(Fields fields)
    {
        if (fields.Has("hole") && fields.Has("area"))
            fields.Findings.Add(NameRules.NamedTwice.At(fields.PlaceOf("area"), $"{fields.Element} has both hole and area", "Keep the one that is known."));
        var hole = ShapeReader.Hole(fields);
        return fields.Area("area", OpeningRanges.Area) is { } area && hole is null ? new Shape.Cutout(area) : hole ?? Shape.Unsized.Instance;
    }
}
