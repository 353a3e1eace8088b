using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Studies.Pressures;

namespace Circuits.Rendering;

/// <summary>Steady pressures for programs: the document <c>circuits.pressures/1</c>.</summary>
public static class PressuresJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, PressureReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.pressures/1", report.Assembly, report.NearestMatched);
        json.Names("assumptions", report.Assumptions);
        json.WriteStartArray("points");
        foreach (var point in report.Points)
        {
            json.WriteStartObject();
            json.WriteString("name", point.At.Name);
            json.Rounded("celsius", point.At.Celsius, 3);
            json.Rounded("revolutionsPerMinute", point.At.RevolutionsPerMinute, 3);
            json.WriteStartArray("gears");
            foreach (var gear in point.Gears) Gear(json, report, gear);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        SpreadJson.Pressures(json, report, report.Spread);
        MattersText.Write(json, report.Matters);
        json.Findings(report.Findings, assemblies: false);
        json.Names("cautions", [Cautions.Measuring, Cautions.WhoDecides]);
        json.WriteEndObject();
    }

    // Without an answer there is no number that could be taken for one.
    private static void Gear(Utf8JsonWriter json, PressureReport report, PressureGear gear)
    {
        json.WriteStartObject();
        json.WriteString("gear", gear.Gear);
        json.WriteBoolean("converged", gear.Converged);
        if (gear.Converged) json.WriteNull("worst");
        else json.WriteString("worst", gear.Worst);
        json.WriteNumber("residual", gear.Residual);
        Number("pumpLitresPerMinute", gear.PumpLitresPerMinute, 4);
        Number("spilledLitresPerMinute", gear.SpilledLitresPerMinute, 4);
        Number("pumpKilopascals", gear.LineKilopascals, 3);
        json.WriteStartArray("taps");
        for (var i = 0; i < gear.Taps.Length; i++)
        {
            json.WriteStartObject();
            json.WriteString("tap", report.Taps[i].Name);
            json.WriteString("passage", report.Taps[i].At.Name.ToString());
            json.Rounded("kilopascals", gear.Taps[i], 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("passages");
        foreach (var passage in gear.Passages)
        {
            json.WriteStartObject();
            json.WriteString("passage", passage.Passage);
            json.Rounded("kilopascals", passage.Kilopascals, 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Rates(json, "flows", gear.Flows);
        Rates(json, "budget", gear.Budget);
        json.WriteEndObject();

        void Number(string field, double value, int places) => json.Rounded(field, gear.Converged ? value : null, places);
    }

    private static void Rates(Utf8JsonWriter json, string field, ImmutableArray<SteadyRate> rates)
    {
        json.WriteStartArray(field);
        foreach (var rate in rates)
        {
            json.WriteStartObject();
            json.WriteString("element", rate.Element);
            json.WriteString("from", rate.From);
            json.WriteString("to", rate.To);
            json.Rounded("litresPerMinute", rate.LitresPerMinute, 5);
            json.PlaceFields(rate.Place);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
