using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Valves(YamlMapping content) => revision = revision with
    {
        Valves = Named(content, "valves", "valve", (key, fields) => ValveReader.Read(key, fields, part), valve => (valve.Name, valve.Place)),
    };
}

internal sealed partial class Sections
{
    public void Valves(List<Section> all) => all.Add(new("valves", "valve"));
}

/// <summary>Reads two-position spools.</summary>
internal static class ValveReader
{
    /// <summary>The valve.</summary>
    public static Valve Read(YamlScalar key, Fields fields, PartContext part)
    {
        var rest = PortReader.Read(fields.List("rest"), fields.What("rest"), part);
        var moved = PortReader.Read(fields.List("moved"), fields.What("moved"), part);
        if (!(fields.Has("rest") | fields.Has("moved")))
            part.Findings.Add(ShapeRules.MissingKey.At(key.Place, $"{fields.Element} joins nothing: it lacks rest and moved", "Add rest: [[a, b]], moved: [[a, c]]."));
        return new Valve(key.Text, rest, moved, Forces(fields, "moved-by", needed: true, part), Forces(fields, "held-by", needed: false, part), key.Place)
        {
            Travel = fields.Length("travel", SpoolRanges.Travel),
            Overlap = LapReader.Read(fields, 0.5),
        };
    }

    private static ImmutableArray<SpoolForce> Forces(Fields fields, string key, bool needed, PartContext part)
    {
        var node = needed ? fields.Need(key, "[{pressure: passage, area: 95 mm2}]") : fields.Find(key);
        return node is null ? [] : [.. Nodes.ListOrOne(node).Select(item => Force(item, fields.What(key), part)).OfType<SpoolForce>()];
    }

    private static SpoolForce? Force(YamlNode item, What what, PartContext part)
    {
        if (Fields.Open(item, what.ToString(), item.Place, part.Findings) is not { } fields) return null;
        SpoolForce? force = null;
        var spring = fields.Has("spring");
        if (spring == fields.Has("pressure"))
        {
            part.Findings.Add(ShapeRules.MissingKey.At(
                item.Place, $"{what} must have {(spring ? "one of pressure and spring, not both" : "pressure or spring")}", "Write {pressure: passage, area: 95 mm2} or {spring: 40 N}."));
        }

        if (spring)
        {
            var rate = fields.SpringRate("rate", SpoolRanges.Rate);
            if (fields.Force("spring", SpoolRanges.Spring) is { } preload) force = new SpoolForce.Spring(preload, rate, item.Place);
        }
        else
        {
            var area = fields.Area("area", SpoolRanges.Land);
            if (fields.Find("pressure") is { } node && part.Passages.Find(node, fields.What("pressure"), sump: true) is { } from)
                force = new SpoolForce.Signal(from, area, item.Place);
        }

        fields.Close();
        return force;
    }
}
