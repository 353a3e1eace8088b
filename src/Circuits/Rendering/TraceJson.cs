using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>Traces for programs: the document <c>circuits.trace/1</c>.</summary>
public static class TraceJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="assembly">The assembly that was traced.</param>
    /// <param name="nearest">Its nearest matched sets.</param>
    /// <param name="traces">The traces, in the order to write them.</param>
    public static void Write(Utf8JsonWriter json, Assembly assembly, ImmutableArray<string> nearest, ImmutableArray<Trace> traces)
    {
        json.WriteStartObject();
        json.Assembly("circuits.trace/1", assembly, nearest);
        json.WriteStartArray("traces");
        foreach (var trace in traces)
        {
            json.WriteStartObject();
            json.WriteString("gear", trace.Gear);
            json.WriteString("of", trace.Of);
            json.WritePropertyName("apply");
            Fact(json, trace.Apply);
            json.WritePropertyName("release");
            Fact(json, trace.Release);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Fact(Utf8JsonWriter json, TraceFact fact)
    {
        json.WriteStartObject();
        json.WriteString("fact", fact.Text);
        json.PlaceFields(fact.Place);
        json.WriteStartArray("because");
        foreach (var reason in fact.Because) Fact(json, reason);
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
