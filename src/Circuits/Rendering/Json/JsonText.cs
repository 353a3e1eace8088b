using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Circuits.Rendering.Json;

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

    /// <summary>One document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="units">The units of its sentences.</param>
    public static string Of(Document document, UnitSystem units = UnitSystem.Si) => Of(json => Write(json, document, units));

    /// <summary>An array of documents.</summary>
    /// <param name="documents">The documents.</param>
    /// <param name="units">The units of their sentences.</param>
    public static string Of(IReadOnlyList<Document> documents, UnitSystem units = UnitSystem.Si) => Of(json =>
    {
        json.WriteStartArray();
        foreach (var document in documents) Write(json, document, units);
        json.WriteEndArray();
    });

    /// <summary>A document on a line of its own.</summary>
    internal static string Line(Document document) => Of(json => Write(json, document, UnitSystem.Si), Options with { Indented = false }) + "\n";

    /// <summary>Whatever is written.</summary>
    internal static string Of(Action<Utf8JsonWriter> write) => Of(write, Options) + "\n";

    private static void Write(Utf8JsonWriter json, Document document, UnitSystem units) =>
        JsonSerializer.Serialize(json, document, DocumentContext.Of(units).GetTypeInfo(document.GetType())!);

    private static string Of(Action<Utf8JsonWriter> write, JsonWriterOptions options)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, options)) write(json);

        // The encoder lets pass what reorders a line of text; such characters stand inside strings alone, where an escape means the same.
        return string.Join('\n', Encoding.UTF8.GetString(bytes.WrittenSpan).Split('\n').Select(Printable.Of));
    }
}
