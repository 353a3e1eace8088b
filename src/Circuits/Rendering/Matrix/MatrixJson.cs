using System.Text;
using System.Text.Json;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Matrix;

/// <summary>A whole matrix as one JSON document.</summary>
public static class MatrixJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="summary">The groups.</param>
    /// <param name="rows">Every row as an object of JSON, in order.</param>
    public static void Write(Utf8JsonWriter json, MatrixSummary summary, IEnumerable<string> rows)
    {
        var space = summary.Space;
        json.WriteStartObject();
        json.WriteString("schema", "circuits.matrix/1");
        json.WriteString("unit", space.Unit.Name);
        json.WriteString("data", Words.Of(space.Unit.Data));
        json.WriteStartObject("parts");
        for (var part = 0; part < space.Choices.Length; part++)
            json.Names(space.Unit.Parts[part].Name, space.Choices[part].Select(revision => revision.Name));
        json.WriteEndObject();
        json.Names("gears", space.Gears.Select(gear => space.Unit.Gears[gear].Name));
        json.WriteNumber("assemblies", space.Count);
        json.WriteNumber("networks", summary.Networks);
        json.WriteStartArray("groups");
        foreach (var group in summary.BestFirst()) Write(json, summary, group);
        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in rows) json.WriteRawValue(Encoding.UTF8.GetBytes(row.TrimEnd('\n')));
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, MatrixSummary summary, MatrixGroup group)
    {
        var space = summary.Space;
        json.WriteStartObject();
        json.WriteNumber("group", group.Number);
        json.WriteString("verdict", Words.Of(group.Behaviour.Verdict));
        json.WriteString("worstGear", group.WorstGear < 0 ? null : space.Unit.Gears[space.Gears[group.WorstGear]].Name);
        json.WriteNumber("assemblies", group.Count);
        json.Names("matched", group.Matched);
        json.WriteStartArray("gears");
        for (var i = 0; i < space.Gears.Length; i++)
        {
            var gear = group.Behaviour.Gears[i];
            json.WriteStartObject();
            json.WriteString("gear", space.Unit.Gears[space.Gears[i]].Name);
            json.WriteString("verdict", Words.Of(gear.Verdict));
            json.WriteString("feels", gear.Feels);
            json.WriteNumber("crossFeeds", gear.CrossFeeds);
            json.WriteBoolean("dependsOnHistory", gear.DependsOnHistory);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("revisions");
        foreach (var box in summary.BoxesOf(group))
        {
            json.WriteStartObject();
            for (var part = 0; part < box.Parts.Length; part++)
                json.Names(space.Unit.Parts[part].Name, box.Parts[part].Select(i => space.Choices[part][i].Name));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
