using System.Text.Json;
using Circuits.Judging;

namespace Circuits.Rendering;

/// <summary>One assembly, every gear, for programs: the document <c>circuits.gears/1</c>.</summary>
public static class GearsJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, AssemblyReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.gears/1", report.Assembly, report.NearestMatched);
        json.Names("assumptions", report.Assumptions);
        json.WriteStartArray("gears");
        foreach (var gear in report.Gears) Gear(json, gear);
        json.WriteEndArray();
        json.Findings(report.Findings, assemblies: false);
        json.Names("cautions", Cautions.For(report, pressures: true));
        json.WriteEndObject();
    }

    private static void Gear(Utf8JsonWriter json, GearReport gear)
    {
        json.WriteStartObject();
        json.WriteString("gear", gear.Gear);
        json.WriteBoolean("settled", gear.Settled);
        json.WriteBoolean("dependsOnHistory", gear.DependsOnHistory);
        json.WriteString("verdict", Words.Of(gear.Verdict));
        json.WriteStartArray("clutches");
        foreach (var clutch in gear.Clutches) Clutch(json, clutch);
        json.WriteEndArray();
        json.WriteStartArray("crossFeeds");
        foreach (var feed in gear.CrossFeeds) Feed(json, feed);
        json.WriteEndArray();
        Drive(json, gear.Drive);
        json.Rounded("lineKilopascals", gear.LineKilopascals, 3);
        json.WriteStartArray("positions");
        foreach (var position in gear.Positions)
        {
            json.WriteStartObject();
            json.WriteString("kind", Words.Of(position.Kind));
            json.WriteString("element", position.Element);
            json.WriteString("position", position.Position);
            json.WriteString("reference", position.Reference);
            json.PlaceFields(position.Place);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("pressures");
        foreach (var pressure in gear.Pressures)
        {
            json.WriteStartObject();
            json.WriteString("passage", pressure.Passage);
            json.WriteString("joinedTo", Words.Of(pressure.State));
            json.Rounded("kilopascals", pressure.Kilopascals, 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Names("cycle", gear.Cycle);
        json.Names("histories", gear.Histories);
        json.WriteEndObject();
    }

    private static void Clutch(Utf8JsonWriter json, ClutchReport clutch)
    {
        json.WriteStartObject();
        json.WriteString("clutch", clutch.Clutch);
        ClutchFields(json, clutch);
        json.WriteEndObject();
    }

    /// <summary>What there is to say of a clutch in a gear, but for its name.</summary>
    internal static void ClutchFields(Utf8JsonWriter json, ClutchReport clutch)
    {
        json.WriteBoolean("charted", clutch.Charted);
        json.WriteString("state", Words.Of(clutch.State));
        json.WriteString("verdict", Words.Of(clutch.Verdict));
        json.Rounded("level", clutch.Level, 4);
        if (clutch.StoppedAt is { } stop)
        {
            json.WriteStartObject("stoppedAt");
            json.WriteString("element", stop.Element);
            json.WriteString("reason", stop.Reason);
            json.PlaceFields(stop.Place);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("stoppedAt");
        }

        json.Rounded("kilopascals", clutch.Kilopascals, 3);
        Opening(json, "apply", clutch.Apply);
        Opening(json, "release", clutch.Release);
    }

    private static void Opening(Utf8JsonWriter json, string field, Control? control)
    {
        if (control is null)
        {
            json.WriteNull(field);
            return;
        }

        json.WriteStartObject(field);
        json.WriteString("element", control.Element);
        json.Rounded("squareMillimetres", control.SquareMillimetres, 4);
        json.Rounded("millimetres", control.Millimetres, 4);
        json.WriteBoolean("valvePort", control.IsPort);
        json.PlaceFields(control.Place);
        json.WriteEndObject();
    }

    internal static void Feed(Utf8JsonWriter json, CrossFeed feed)
    {
        json.WriteStartObject();
        json.WriteString("into", feed.Into);
        json.WriteString("from", feed.From);
        json.WriteString("through", feed.Through);
        json.PlaceFields(feed.Place);
        json.WriteString("part", feed.Part);
        json.WriteString("revision", feed.Revision);
        json.Names("moves", feed.Moves);
        json.WriteEndObject();
    }

    internal static void Drive(Utf8JsonWriter json, DriveReport? drive)
    {
        if (drive is null)
        {
            json.WriteNull("drive");
            return;
        }

        json.WriteStartObject("drive");
        json.WriteNumber("mobility", drive.Mobility);
        json.Rounded("ratio", drive.Ratio, 4);
        json.WriteString("feels", drive.Feels);
        json.Rounded("expected", drive.Expected, 4);
        json.WriteEndObject();
    }
}
