using System.Text.Json;

namespace Circuits.Rendering;

/// <summary>A check of one file for programs: the document <c>circuits.check/1</c>.</summary>
public static class CheckJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="file">What the check came to.</param>
    public static void Write(Utf8JsonWriter json, CheckedFile file)
    {
        json.WriteStartObject();
        json.WriteString("schema", "circuits.check/1");
        json.WriteString("file", file.File);
        json.WriteString("unit", file.Unit?.Name);
        json.WriteString("data", file.Unit is { } unit ? Words.Of(unit.Data) : null);
        json.WriteBoolean("ok", file.Ok);
        json.WriteStartArray("matched");
        foreach (var report in file.Matched)
        {
            json.WriteStartObject();
            json.WriteString("matched", report.Assembly.Matched);
            json.Choice("assembly", report.Assembly.Choice);
            json.WriteString("verdict", Words.Of(report.Verdict));
            json.WriteStartObject("gears");
            foreach (var gear in report.Gears) json.WriteString(gear.Gear, Words.Of(gear.Verdict));
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("expectations");
        json.WriteNumber("held", file.ExpectationsHeld);
        json.WriteNumber("total", file.ExpectationsTotal);
        json.WriteEndObject();
        json.Findings(file.Findings, assemblies: true);
        json.WriteEndObject();
    }
}
