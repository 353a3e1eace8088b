using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Faults;

namespace Circuits.Rendering;

/// <summary>A plan to check with air, for programs: the document <c>circuits.air-check/1</c>.</summary>
public static class AirCheckJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The plan.</param>
    public static void Write(Utf8JsonWriter json, AirReport report)
    {
        json.WriteStartObject();
        json.WriteString("schema", "circuits.air-check/1");
        json.WriteString("unit", report.Assembly.Unit.Name);
        json.WriteString("data", Words.Of(report.Assembly.Unit.Data));
        json.Choice("assembly", report.Assembly.Choice);
        json.WriteString("matched", report.Assembly.Matched);
        json.WriteString("lever", report.Lever);
        json.WriteNumber("faults", report.Faults.Length);
        Connections(json, "connections", report.Connections);
        Connections(json, "others", report.Others);
        Faults(json, "blind", report.Blind);
        json.Names("assumptions", report.Assumptions);
        json.Names("cautions", Cautions.ForAir);
        json.WriteEndObject();
    }

    private static void Connections(Utf8JsonWriter json, string field, ImmutableArray<AirConnection> connections)
    {
        json.WriteStartArray(field);
        foreach (var connection in connections)
        {
            json.WriteStartObject();
            Port(json, connection.Port);
            json.WriteNumber("shows", connection.Shows);
            json.WriteNumber("adds", connection.Adds);
            json.Rounded("share", connection.Share, 4);
            Outcome(json, connection.Right);
            json.WriteStartArray("otherwise");
            foreach (var meaning in connection.Meanings)
            {
                json.WriteStartObject();
                json.WriteString("sign", Word(meaning.Sign.Kind));
                json.WriteString("at", meaning.Sign.At);
                Faults(json, "faults", meaning.Faults);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Port(Utf8JsonWriter json, AirPort port)
    {
        json.WriteString("port", port.Name);
        json.WriteString("kind", port.Kind switch { AirPortKind.Tap => "tap", AirPortKind.Feed => "feed", _ => "face" });
        json.WriteString("passage", port.Passage.ToString());
        json.WriteString("joint", port.Joint);
        json.Names("locations", port.Locations);
        json.PlaceFields(port.Place);
    }

    private static void Outcome(Utf8JsonWriter json, AirOutcome outcome)
    {
        json.WriteBoolean("settled", outcome.Settled);
        json.WriteStartArray("clutches");
        foreach (var (clutch, move) in outcome.Clutches)
        {
            json.WriteStartObject();
            json.WriteString("clutch", clutch);
            json.WriteString("move", move switch { AirMove.Moves => "moves", AirMove.May => "may-move", _ => "stays" });
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("hisses");
        foreach (var hiss in outcome.Hisses)
        {
            json.WriteStartObject();
            json.WriteString("at", hiss.At);
            json.WriteBoolean("heard", hiss.Heard);
            json.Rounded("squareMillimetres", hiss.SquareMillimetres, 3);
            json.PlaceFields(hiss.Place);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Rounded("holdsBelowKilopascals", outcome.GivesWay is null ? null : outcome.HoldsBelow, 1);
        json.WriteString("givesWay", outcome.GivesWay);
    }

    private static void Faults(Utf8JsonWriter json, string field, ImmutableArray<Fault> faults) => json.Names(field, faults.Select(fault => fault.Code));

    private static string Word(AirSignKind kind) => kind switch
    {
        AirSignKind.Stays => "stays",
        AirSignKind.Moves => "moves",
        AirSignKind.Hisses => "hisses",
        _ => "silent",
    };
}
