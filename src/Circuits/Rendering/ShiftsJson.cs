using System.Text.Json;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering;

/// <summary>Timed shifts for programs: the document <c>circuits.shifts/1</c>.</summary>
public static class ShiftsJson
{
    /// <summary>Time between the samples of a shift, ms.</summary>
    private const double Step = 10;

    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, ShiftReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.shifts/1", report.Assembly, report.NearestMatched);
        json.Names("changes", report.Assembly.Changes);
        if (report.Beside is { } beside)
        {
            json.WriteStartObject("beside");
            json.Choice("assembly", beside.Choice);
            json.WriteString("matched", beside.Matched);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("beside");
        }

        json.Names("assumptions", report.Assumptions);
        json.WriteStartObject("conditions");
        json.Rounded("celsius", report.Conditions.Celsius, 3);
        json.Rounded("standingRevolutionsPerMinute", report.Conditions.StandingSpeed, 3);
        json.Rounded("drivingRevolutionsPerMinute", report.Conditions.DrivingSpeed, 3);
        json.WriteEndObject();
        json.WriteStartArray("shifts");
        foreach (var pair in report.Shifts)
        {
            json.WriteStartObject();
            json.WriteString("shift", pair.Here.Plan.Name);
            json.WriteString("from", pair.Here.Plan.From.Name);
            json.WriteString("to", pair.Here.Plan.To.Name);
            json.WriteString("kind", Word(pair.Here.Plan.Kind));
            json.Rounded("inputNewtonMetres", pair.Here.Torque, 3);
            json.WriteStartObject("here");
            Shift(json, pair.Here);
            json.WriteEndObject();
            if (pair.Beside is { } other)
            {
                json.WriteStartObject("beside");
                Shift(json, other);
                json.WriteEndObject();
            }
            else
            {
                json.WriteNull("beside");
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        SpreadJson.Shifts(json, report.Spread);
        MattersText.Write(json, report.Matters);
        json.Findings(report.Findings, assemblies: false);
        json.Names("cautions", Cautions.For(report));
        json.WriteEndObject();
    }

    // Without an answer there is no number that could be taken for one.
    internal static void Shift(Utf8JsonWriter json, TimedShiftReport shift, bool samples = true)
    {
        var known = shift.Verdict != ShiftVerdict.DidNotConverge;
        json.WriteString("verdict", ShiftsText.Words(shift.Verdict));
        json.WriteString("reason", shift.Reason);
        json.Rounded("holdsMs", shift.HoldsMs, 3);
        json.Rounded("letsGoMs", shift.LetsGoMs, 3);
        json.Rounded("gapMs", shift.GapMs, 3);
        json.Rounded("flareMs", known ? shift.FlareMs : null, 3);
        json.Rounded("tieUpMs", known ? shift.TieUpMs : null, 3);
        json.Rounded("endMs", known ? shift.EndMs : null, 3);
        if (known) json.WriteNumber("volumeLost", shift.Lost);
        else json.WriteNull("volumeLost");
        json.WriteStartArray("clutches");
        foreach (var clutch in shift.Clutches)
        {
            json.WriteStartObject();
            json.WriteString("clutch", clutch.Clutch);
            json.WriteString("role", Word(clutch.Role));
            json.Rounded("carriesBeforeNewtonMetres", clutch.NeedBefore, 3);
            json.Rounded("carriesAfterNewtonMetres", clutch.NeedAfter, 3);
            json.Rounded("touchesMs", clutch.FillMs, 3);
            json.Rounded("holdsMs", clutch.HoldsMs, 3);
            json.Rounded("letsGoMs", clutch.LetsGoMs, 3);
            json.Rounded("releasedMs", clutch.ReleasedMs, 3);
            json.Rounded("emptyMs", clutch.EmptyMs, 3);
            json.Rounded("capacityNewtonMetres", clutch.CapacityAfter, 3);
            json.Rounded("peakNewtonMetres", clutch.Peak, 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (!samples) return;
        json.WriteStartArray("samples");
        foreach (var sample in ShiftSamples.Every(shift, Step))
        {
            json.WriteStartObject();
            json.Rounded("ms", sample.Ms, 3);
            json.Rounded("lineKilopascals", sample.LineKilopascals, 2);
            Row("kilopascals", clutch => clutch.Kilopascals, 2);
            Row("stroke", clutch => clutch.Stroke, 4);
            Row("newtonMetres", clutch => clutch.Capacity, 2);
            json.WriteEndObject();

            void Row(string field, Func<(double Kilopascals, double Stroke, double Capacity), double> value, int places)
            {
                json.WriteStartArray(field);
                foreach (var clutch in sample.Clutches) json.WriteNumberValue(Math.Round(value(clutch), places) + 0.0);
                json.WriteEndArray();
            }
        }

        json.WriteEndArray();
    }

    private static string Word(ShiftKind kind) => kind switch
    {
        ShiftKind.Engagement => "engagement",
        ShiftKind.Upshift => "upshift",
        ShiftKind.Downshift => "downshift",
        _ => "release",
    };

    private static string Word(ClutchRole role) => role switch
    {
        ClutchRole.OnComing => "on-coming",
        ClutchRole.OffGoing => "off-going",
        ClutchRole.Holding => "holding",
        _ => "uncharted",
    };
}
