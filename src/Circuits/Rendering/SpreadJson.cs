using System.Text.Json;
using Circuits.Studies.Pressures;
using Circuits.Studies.Shifts;
using Circuits.Studies.Sizing;
using Circuits.Studies.Spread;

namespace Circuits.Rendering;

/// <summary>How far results spread, as the field <c>spread</c> of a document; null when it was not asked for.</summary>
internal static class SpreadJson
{
    public static void Pressures(Utf8JsonWriter json, PressureReport report, PressureSpread? spread)
    {
        if (!Start(json, spread?.Request, spread?.Sizes)) return;
        json.WriteStartArray("points");
        foreach (var point in spread!.Points)
        {
            json.WriteStartObject();
            json.WriteString("name", point.At.Name);
            json.Rounded("celsius", point.At.Celsius, 3);
            json.Rounded("revolutionsPerMinute", point.At.RevolutionsPerMinute, 3);
            json.WriteStartArray("gears");
            foreach (var gear in point.Gears)
            {
                json.WriteStartObject();
                json.WriteString("gear", gear.Gear);
                json.Rounded("convergedPercent", gear.Converged, 3);
                Range(json, "pumpKilopascals", gear.Line);
                json.WriteStartArray("taps");
                for (var i = 0; i < gear.Taps.Length; i++)
                {
                    json.WriteStartObject();
                    json.WriteString("tap", report.Taps[i].Name);
                    Range(json, "kilopascals", gear.Taps[i]);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Shifts(Utf8JsonWriter json, ShiftSpread? spread)
    {
        if (!Start(json, spread?.Request, spread?.Sizes)) return;
        json.WriteStartArray("shifts");
        foreach (var shift in spread!.Shifts)
        {
            json.WriteStartObject();
            json.WriteString("shift", shift.Plan.Name);
            json.WriteStartArray("verdicts");
            foreach (var (verdict, percent) in shift.Verdicts)
            {
                json.WriteStartObject();
                json.WriteString("verdict", ShiftsText.Words(verdict));
                json.Rounded("percent", percent, 3);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            Range(json, "holdsMs", shift.Holds);
            Range(json, "letsGoMs", shift.LetsGo);
            Range(json, "flareMs", shift.Flare);
            Range(json, "tieUpMs", shift.TieUp);
            json.WriteStartArray("clutches");
            foreach (var (clutch, touches) in shift.Clutches)
            {
                json.WriteStartObject();
                json.WriteString("clutch", clutch);
                Range(json, "touchesMs", touches);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Sizes(Utf8JsonWriter json, SizeSpread? spread)
    {
        if (!Start(json, spread?.Request, spread?.Sizes)) return;
        json.WriteStartArray("holes");
        foreach (var (hole, range) in spread!.Holes)
        {
            json.WriteStartObject();
            json.Rounded("millimetres", hole.Millimetres, 4);
            if (hole.Drill is { } drill) json.WriteNumber("numberDrill", drill);
            else json.WriteNull("numberDrill");
            Range(json, "ms", range);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static bool Start(Utf8JsonWriter json, SpreadRequest? request, int? sizes)
    {
        if (request is null)
        {
            json.WriteNull("spread");
            return false;
        }

        json.WriteStartObject("spread");
        json.WriteNumber("samples", request.Count);
        json.WriteNumber("seed", request.Seed);
        json.WriteNumber("sizes", sizes!.Value);
        return true;
    }

    private static void Range(Utf8JsonWriter json, string field, SpreadRange? range)
    {
        if (range is not { } known)
        {
            json.WriteNull(field);
            return;
        }

        json.WriteStartObject(field);
        json.Rounded("low", known.Low, 3);
        json.Rounded("middle", known.Middle, 3);
        json.Rounded("high", known.High, 3);
        json.Rounded("missingPercent", known.Missing, 3);
        json.WriteEndObject();
    }
}
