using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>Writes JSON: UTF-8, indented by two blanks, fields in the order of the contract, numbers in SI units.</summary>
public static class JsonText
{
    // Text stays readable: quotes and letters beyond ASCII are not escaped; controls are.
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>One document, or a JSON array of them.</summary>
    /// <param name="documents">What writes each document.</param>
    /// <param name="array">Whether to write an array even of one.</param>
    public static string Of(IReadOnlyList<Action<Utf8JsonWriter>> documents, bool array)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            if (array) json.WriteStartArray();
            foreach (var document in documents) document(json);
            if (array) json.WriteEndArray();
        }

        // The encoder lets pass what reorders a line of text; such characters stand inside strings alone, where an escape means the same.
        return string.Join('\n', Encoding.UTF8.GetString(bytes.WrittenSpan).Split('\n').Select(Printable.Of)) + "\n";
    }

    internal static void Names(this Utf8JsonWriter json, string field, IEnumerable<string> names)
    {
        json.WriteStartArray(field);
        foreach (var name in names) json.WriteStringValue(name);
        json.WriteEndArray();
    }

    internal static void Choice(this Utf8JsonWriter json, string field, IEnumerable<KeyValuePair<string, string>> choice)
    {
        json.WriteStartObject(field);
        foreach (var (part, revision) in choice) json.WriteString(part, revision);
        json.WriteEndObject();
    }

    /// <summary>What every report on an assembly begins with.</summary>
    internal static void Assembly(this Utf8JsonWriter json, string schema, Assembly assembly, ImmutableArray<string> nearest)
    {
        json.WriteString("schema", schema);
        json.WriteString("unit", assembly.Unit.Name);
        json.WriteString("data", Words.Of(assembly.Unit.Data));
        json.Choice("assembly", assembly.Choice);
        json.WriteString("matched", assembly.Matched);
        json.Names("nearestMatched", nearest);
    }

    /// <summary>A number with a sensible count of places, so that rounding errors do not show; null when it is not finite.</summary>
    internal static void Rounded(this Utf8JsonWriter json, string field, double? value, int places)
    {
        if (value is not { } number || !double.IsFinite(number)) json.WriteNull(field);
        else json.WriteNumber(field, Math.Round(number, places) + 0.0);
    }

    /// <summary>The fields of a place, null where it says nothing.</summary>
    internal static void PlaceFields(this Utf8JsonWriter json, Place? place)
    {
        if (place is { File.Length: > 0 } at)
        {
            json.WriteString("file", at.File);
            Count("line", at.Line);
            Count("column", at.Column);
        }
        else
        {
            json.WriteNull("file");
            json.WriteNull("line");
            json.WriteNull("column");
        }

        void Count(string field, int value)
        {
            if (value > 0) json.WriteNumber(field, value);
            else json.WriteNull(field);
        }
    }

    /// <summary>Findings; the assembly that each was found in is written only where it is not plain from the document.</summary>
    internal static void Findings(this Utf8JsonWriter json, IEnumerable<Finding> findings, bool assemblies, string field = "findings")
    {
        json.WriteStartArray(field);
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", Words.Of(finding.Severity));
            json.WriteString("message", finding.Message);
            json.WriteString("gear", finding.Gear);
            json.PlaceFields(finding.Place);
            json.WriteString("help", finding.Help);
            if (assemblies)
            {
                if (finding.Assembly.IsEmpty) json.WriteNull("assembly");
                else json.Choice("assembly", finding.Assembly);
            }

            json.WriteStartArray("related");
            foreach (var related in finding.Related)
            {
                json.WriteStartObject();
                json.WriteString("message", related.Message);
                json.PlaceFields(related.Place);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
