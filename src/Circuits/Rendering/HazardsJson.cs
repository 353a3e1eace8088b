using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Studies.Hazards;

namespace Circuits.Rendering;

/// <summary>A failure mode and effects table, for programs: the document <c>circuits.hazards/1</c>.</summary>
public static class HazardsJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The table.</param>
    public static void Write(Utf8JsonWriter json, HazardReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.hazards/1", report.Assembly, report.NearestMatched);
        json.Names("changes", report.Assembly.Changes);
        json.Names("gears", report.Gears);
        json.WriteStartArray("scale");
        foreach (var step in SeverityScale.Steps)
        {
            json.WriteStartObject();
            json.WriteNumber("severity", (int)step.Severity);
            json.WriteString("word", step.Word);
            json.WriteString("meaning", step.Meaning);
            json.WriteBoolean("mustNotBeDriven", step.Severity >= SeverityScale.MustNotBeDriven);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Effects(json, "asFitted", report.AsFitted);
        json.WriteStartArray("rows");
        foreach (var row in report.Rows) Row(json, row);
        json.WriteEndArray();
        json.Names("assumptions", report.Assumptions);
        json.Findings(report.Findings, assemblies: false);
        json.Names("cautions", HazardsText.CautionsOf(report));
        json.WriteEndObject();
    }

    private static void Row(Utf8JsonWriter json, HazardRow row)
    {
        json.WriteStartObject();
        json.WriteString("mode", row.Mode);
        json.WriteString("code", row.Code);
        json.WriteString("item", row.Item);
        json.WriteString("function", row.Function);
        json.PlaceFields(row.Place);
        json.Rounded("weight", row.Weight, 4);
        json.WriteNumber("severity", (int)row.Severity);
        json.WriteBoolean("mustNotBeDriven", row.MustNotBeDriven);
        Effects(json, "effects", row.Effects);
        if (row.Reading is { } reading)
        {
            json.WriteStartObject("detectedBy");
            json.WriteString("tap", reading.Tap);
            json.WriteString("gear", reading.Gear);
            json.Rounded("rightKilopascals", reading.Right, 1);
            json.Rounded("foundKilopascals", reading.Found, 1);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("detectedBy");
        }

        json.WriteEndObject();
    }

    private static void Effects(Utf8JsonWriter json, string field, ImmutableArray<HazardEffect> effects)
    {
        json.WriteStartArray(field);
        foreach (var effect in effects)
        {
            json.WriteStartObject();
            json.WriteString("gear", effect.Gear);
            json.WriteBoolean("noCurrent", effect.NoCurrent);
            json.WriteNumber("severity", (int)effect.Severity);
            json.WriteString("feels", effect.Feels);
            json.Names("local", effect.Local);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
