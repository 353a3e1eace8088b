using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Circuits.Studies.Identify;

namespace Circuits.Rendering.Json;

/// <summary>A way to write values that also says what it writes.</summary>
internal interface IDescribed
{
    /// <summary>The JSON Schema of what is written.</summary>
    JsonObject Schema();
}

/// <summary>Documents are written, never read.</summary>
internal abstract class OnlyWrites<T> : JsonConverter<T>, IDescribed
{
    public abstract JsonObject Schema();

    public sealed override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Documents are not read.");
}

/// <summary>Values of an enumeration, by the words that text uses for them.</summary>
internal sealed class WordConverter<T>(Func<T, string> word) : OnlyWrites<T>
    where T : struct, Enum
{
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(word(value));

    public override JsonObject Schema() =>
        new() { ["type"] = "string", ["enum"] = new JsonArray([.. Enum.GetValues<T>().Select(value => JsonValue.Create(word(value)))]) };
}

/// <summary>What the renderer has words for, as a sentence.</summary>
internal sealed class SentenceConverter<T>(Func<T, string> words) : OnlyWrites<T>
    where T : class
{
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(words(value));

    public override JsonObject Schema() => new() { ["type"] = "string" };
}

/// <summary>Numbers; what is none is null.</summary>
internal sealed class NumberConverter : OnlyWrites<double>
{
    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (double.IsFinite(value)) writer.WriteNumberValue(value);
        else writer.WriteNullValue();
    }

    public override JsonObject Schema() => new() { ["type"] = "number" };
}

/// <summary>What a trait is on a revision: true or false, a count, sizes, or null.</summary>
internal sealed class AnswerConverter : OnlyWrites<Answer>
{
    public override void Write(Utf8JsonWriter writer, Answer value, JsonSerializerOptions options)
    {
        switch (value)
        {
            case Answer.YesNo yes:
                writer.WriteBooleanValue(yes.Value);
                break;
            case Answer.Number number:
                writer.WriteNumberValue(number.Value);
                break;
            case Answer.Sizes sizes:
                writer.WriteStartArray();
                foreach (var size in sizes.All)
                {
                    writer.WriteStartObject();
                    writer.WriteNumber("widthMm", Fields.Rounded(size.Width, 4));
                    if (Fields.Rounded(size.Length, 4) is { } length) writer.WriteNumber("lengthMm", length);
                    else writer.WriteNull("lengthMm");
                    writer.WriteEndObject();
                }

                writer.WriteEndArray();
                break;
            default:
                writer.WriteNullValue();
                break;
        }
    }

    public override JsonObject Schema() => JsonNode.Parse(
        """
        {
          "description": "True or false, a count, sizes (none when there is nothing to measure), or null when the file does not say.",
          "anyOf": [
            {"type": ["boolean", "null"]},
            {"type": "integer", "minimum": 0},
            {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {"widthMm": {"type": "number", "exclusiveMinimum": 0}, "lengthMm": {"type": ["number", "null"], "exclusiveMinimum": 0}},
                "required": ["widthMm", "lengthMm"],
                "additionalProperties": false
              }
            }
          ]
        }
        """)!.AsObject();
}

/// <summary>Rows of a matrix that are text already.</summary>
internal sealed class RowLineConverter : OnlyWrites<RowLine>
{
    public override void Write(Utf8JsonWriter writer, RowLine value, JsonSerializerOptions options) => writer.WriteRawValue(value.Json.AsSpan().TrimEnd('\n'));

    public override JsonObject Schema() => new() { ["$ref"] = "#/$defs/row" };
}
