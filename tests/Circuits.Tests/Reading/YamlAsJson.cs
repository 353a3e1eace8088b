using System.Globalization;
using System.Text.Json.Nodes;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Circuits.Tests.Reading;

/// <summary>
/// YAML as JSON by the core schema of YAML 1.2, as an editor would see it. Shares nothing with the reader.
/// </summary>
internal static class YamlAsJson
{
    public static JsonNode? Read(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return Convert(stream.Documents[0].RootNode);
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode mapping => new JsonObject(mapping.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Convert(pair.Value)))),
        YamlSequenceNode sequence => new JsonArray([.. sequence.Children.Select(Convert)]),
        YamlScalarNode { Style: ScalarStyle.Plain } scalar => Plain(scalar.Value ?? ""),
        _ => JsonValue.Create(((YamlScalarNode)node).Value),
    };

    private static JsonValue? Plain(string text) => text switch
    {
        "" or "~" or "null" or "Null" or "NULL" => null,
        "true" => JsonValue.Create(true),
        "false" => JsonValue.Create(false),
        _ when long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) => JsonValue.Create(whole),
        _ when char.IsAsciiDigit(text[^1]) && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        _ => JsonValue.Create(text),
    };
}
