using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Judging;
using Circuits.Studies;
using Circuits.Studies.Changes;

namespace Circuits.Rendering;

/// <summary>What changes do to an assembly, for programs: the document <c>circuits.what-if/1</c>.</summary>
public static class WhatIfJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    /// <param name="job">What the changes are for, or null.</param>
    public static void Write(Utf8JsonWriter json, WhatIfReport report, string? job)
    {
        json.WriteStartObject();
        json.Assembly("circuits.what-if/1", report.Before.Assembly, report.Before.NearestMatched);
        json.WriteString("job", job);
        Changes(json, report.Changes);
        json.WriteString("verdict", Words.Of(report.Before.Verdict));
        json.WriteStartObject("after");
        json.Choice("assembly", report.After.Assembly.Choice);
        json.WriteString("matched", report.After.Assembly.Matched);
        json.Names("nearestMatched", report.After.NearestMatched);
        json.WriteString("verdict", Words.Of(report.After.Verdict));
        json.Names("assumptions", report.After.Assumptions);
        json.WriteEndObject();
        json.WriteBoolean("differs", report.Differs);
        json.WriteStartArray("gears");
        foreach (var gear in report.Gears) Gear(json, gear);
        json.WriteEndArray();
        json.Findings(report.NewFindings, assemblies: false, "newFindings");
        json.Findings(report.VanishedFindings, assemblies: false, "vanishedFindings");
        json.Names("cautions", Cautions.For(report.After, pressures: true));
        json.WriteEndObject();
    }

    internal static void Changes(Utf8JsonWriter json, ImmutableArray<Change> changes)
    {
        json.WriteStartArray("changes");
        foreach (var change in changes) Change(json, change);
        json.WriteEndArray();
    }

    internal static void Change(Utf8JsonWriter json, Change change)
    {
        json.WriteStartObject();
        json.WriteString("change", change.Text);
        json.WriteString("part", change.Part);
        json.WriteString("element", change.Element);
        json.WriteBoolean("canBeUndone", change.CanBeUndone);
        json.PlaceFields(change.Place);
        json.WriteEndObject();
    }

    internal static void Gear(Utf8JsonWriter json, GearDifference gear)
    {
        json.WriteStartObject();
        json.WriteString("gear", gear.Gear);
        State(json, "before", gear.Before);
        State(json, "after", gear.After);
        json.WriteStartArray("clutches");
        foreach (var clutch in gear.Clutches)
        {
            json.WriteStartObject();
            json.WriteString("clutch", clutch.Clutch);
            Clutch(json, "before", clutch.Before);
            Clutch(json, "after", clutch.After);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Feeds(json, "newCrossFeeds", gear.NewCrossFeeds);
        Feeds(json, "vanishedCrossFeeds", gear.VanishedCrossFeeds);
        json.WriteStartArray("positions");
        foreach (var position in gear.Positions)
        {
            json.WriteStartObject();
            json.WriteString("element", position.Name);
            json.WriteString("before", position.Before);
            json.WriteString("after", position.After);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("pressures");
        foreach (var passage in gear.Pressures)
        {
            json.WriteStartObject();
            json.WriteString("passage", passage.Passage);
            json.Rounded("beforeKilopascals", passage.Before, 3);
            json.Rounded("afterKilopascals", passage.After, 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void State(Utf8JsonWriter json, string field, GearReport gear)
    {
        json.WriteStartObject(field);
        json.WriteString("verdict", Words.Of(gear.Verdict));
        json.WriteBoolean("settled", gear.Settled);
        json.WriteBoolean("dependsOnHistory", gear.DependsOnHistory);
        json.Rounded("lineKilopascals", gear.LineKilopascals, 3);
        GearsJson.Drive(json, gear.Drive);
        json.Names("cycle", gear.Cycle);
        json.Names("histories", gear.Histories);
        json.WriteEndObject();
    }

    private static void Clutch(Utf8JsonWriter json, string field, ClutchReport clutch)
    {
        json.WriteStartObject(field);
        GearsJson.ClutchFields(json, clutch);
        json.Names("supplyWay", clutch.SupplyWay);
        json.Names("sumpWay", clutch.SumpWay);
        json.WriteEndObject();
    }

    private static void Feeds(Utf8JsonWriter json, string field, ImmutableArray<CrossFeed> feeds)
    {
        json.WriteStartArray(field);
        foreach (var feed in feeds) GearsJson.Feed(json, feed);
        json.WriteEndArray();
    }
}
