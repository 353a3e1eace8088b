using System.Text.Json;
using Circuits.Studies.Sizing;

namespace Circuits.Rendering;

/// <summary>A hole for a wanted time, for programs: the document <c>circuits.size/1</c>.</summary>
public static class SizeJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, SizeReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.size/1", report.Assembly, report.NearestMatched);
        json.Names("changes", report.Assembly.Changes);
        json.WriteString("location", report.Request.Location);
        json.WriteString("shift", report.Request.Shift.Name);
        json.WriteString("time", Word(report.Request.Time));
        json.WriteString("clutch", report.Clutch);
        json.Rounded("wantedMs", report.Request.Ms, 3);
        json.Rounded("leastMillimetres", report.Request.Least, 4);
        json.Rounded("mostMillimetres", report.Request.Most, 4);
        json.WriteString("outcome", report.Outcome switch
        {
            SizeOutcome.Found => "found",
            SizeOutcome.OutOfRange => "out-of-range",
            SizeOutcome.Unaffected => "unaffected",
            _ => "stalled",
        });
        json.WriteString("reason", report.Reason);
        Hole(json, "now", report.Now);
        Hole(json, "hole", report.Hole);
        Hole(json, "drillBelow", report.DrillBelow);
        Hole(json, "drillAbove", report.DrillAbove);
        json.WriteNumber("solutions", report.Solutions);
        json.WritePropertyName("work");
        if (report.Work is { } work) WhatIfJson.Change(json, work);
        else json.WriteNullValue();
        json.WriteStartArray("tried");
        foreach (var hole in report.Tried)
        {
            json.WriteStartObject();
            HoleFields(json, hole);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("shifts");
        foreach (var (before, after) in report.Shifts)
        {
            json.WriteStartObject();
            json.WriteString("shift", before.Plan.Name);
            json.WriteStartObject("before");
            ShiftsJson.Shift(json, before, samples: false);
            json.WriteEndObject();
            json.WriteStartObject("after");
            ShiftsJson.Shift(json, after, samples: false);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("gears");
        foreach (var gear in report.Gears) WhatIfJson.Gear(json, gear);
        json.WriteEndArray();
        SpreadJson.Sizes(json, report.Spread);
        json.Names("assumptions", report.Assumptions);
        json.Findings(report.Findings, assemblies: false);
        json.Names("cautions", SizeText.CautionsOf(report));
        json.WriteEndObject();
    }

    private static string Word(WantedTime time) => time switch
    {
        WantedTime.Fill => "fill",
        WantedTime.Hold => "hold",
        WantedTime.Release => "release",
        _ => "gap",
    };

    private static void Hole(Utf8JsonWriter json, string field, SizedHole? hole)
    {
        if (hole is null)
        {
            json.WriteNull(field);
            return;
        }

        json.WriteStartObject(field);
        HoleFields(json, hole);
        json.WriteEndObject();
    }

    private static void HoleFields(Utf8JsonWriter json, SizedHole hole)
    {
        json.Rounded("millimetres", hole.Millimetres, 4);
        json.Rounded("ms", hole.Ms, 3);
        if (hole.Drill is { } drill) json.WriteNumber("numberDrill", drill);
        else json.WriteNull("numberDrill");
    }
}
