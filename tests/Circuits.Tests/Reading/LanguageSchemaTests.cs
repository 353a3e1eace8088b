using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Circuits.Reading;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>The language's JSON Schema, held against files by a validator that is not the project's own.</summary>
public sealed class LanguageSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(LanguageSchema.Text);
    private static readonly string Sketch = File.ReadAllText(TestFiles.Find("Reading/sketch.yaml"));
    private static readonly string KitchenSink = File.ReadAllText(TestFiles.Find("Reading/kitchen-sink.yaml"));

    [Fact]
    public void The_schema_keeps_to_its_own_draft()
    {
        using var document = JsonDocument.Parse(LanguageSchema.Text);
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", document.RootElement.GetProperty("$schema").GetString());
        Assert.True(MetaSchemas.Draft202012.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List }).IsValid);
    }

    public static TheoryData<string> Sections() => [.. Circuits.Reading.Sections.All.Select(section => section.Key)];

    /// <summary>A section stands in the schema with the definition that its kind names, and that has the keys which the kind's reader asks for.</summary>
    [Theory]
    [MemberData(nameof(Sections))]
    public void Every_key_that_a_kinds_reader_takes_stands_in_its_definition(string key)
    {
        var section = Circuits.Reading.Sections.Find(key)!;
        var schema = JsonNode.Parse(LanguageSchema.Text)!;
        var entry = schema["$defs"]!["elements"]!["properties"]![key];
        Assert.NotNull(entry);
        Assert.Contains($"#/$defs/{section.Definition}\"", entry.ToJsonString(), StringComparison.Ordinal);
        var kind = char.ToUpperInvariant(key[0]) + key[1..];
        var file = File.ReadAllText(TestFiles.Find($"../../src/Circuits/Reading/Elements/{kind}.cs"));
        var taken = Regex.Matches(file, @"\.(?:Need|NeedText|Find|Has|Text|List|Area|Length|Pressure|Force|SpringRate|Volume|Count|Number|Fraction|Needed)\((?:fields, )?""(?<key>[a-z-]+)""")
            .Select(match => match.Groups["key"].Value).Where(word => word != key).ToHashSet();
        var known = new HashSet<string>();
        Collect(schema, schema["$defs"]![section.Definition]!, known, []);
        foreach (var beside in section.Beside) Assert.NotNull(schema["$defs"]!["elements"]!["properties"]![beside]);
        Assert.Empty(taken.Except(known));
    }

    /// <summary>The names of all properties in a piece of the schema, and in those that it refers to.</summary>
    private static void Collect(JsonNode schema, JsonNode? piece, HashSet<string> names, HashSet<string> seen)
    {
        switch (piece)
        {
            case JsonObject many:
                foreach (var (name, value) in many)
                {
                    if (name == "properties" && value is JsonObject properties) names.UnionWith(properties.Select(pair => pair.Key));
                    if (name == "$ref" && value!.GetValue<string>() is var to && seen.Add(to)) Collect(schema, schema["$defs"]![to["#/$defs/".Length..]], names, seen);
                    Collect(schema, value, names, seen);
                }

                break;
            case JsonArray items:
                foreach (var item in items) Collect(schema, item, names, seen);
                break;
        }
    }

    [Fact]
    public void The_sketch_is_valid() => Assert.Equal("", Faults(Sketch));

    [Fact]
    public void A_file_with_every_element_is_valid() => Assert.Equal("", Faults(KitchenSink));

    [Fact]
    public void A_part_written_in_place_is_valid_as_in_its_own_file()
    {
        var body = File.ReadAllText(TestFiles.Find("Reading/parts/body.yaml"));
        var indented = string.Concat(body.Split('\n').Select(line => line.Length == 0 ? "" : $"    {line}\n"));
        Assert.Equal("", Faults(KitchenSink.Replace("body: parts/body.yaml", "body:\n" + indented, StringComparison.Ordinal)));
    }

    public static TheoryData<string> Demos()
    {
        var folder = TestFiles.Find("../../circuits");
        return [.. Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file)).Order(StringComparer.Ordinal)];
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_demo_file_is_valid(string name)
    {
        var text = File.ReadAllText(Path.Combine(TestFiles.Find("../../circuits"), name));
        var node = YamlAsJson.Read(text)!.AsObject();
        if (node.ContainsKey("parts"))
        {
            Assert.Equal("", Faults(node));
            return;
        }

        // A part's file holds what would stand in the unit file.
        var unit = JsonNode.Parse("""{"format": 1, "unit": "x", "data": "invented", "parts": {}, "gears": {}}""")!.AsObject();
        unit["parts"]!["part"] = node;
        Assert.Equal("", Faults(unit));
    }

    [Theory]
    [InlineData("data: invented", "data: made-up")]
    [InlineData("format: 1", "format: 2")]
    [InlineData("unit: Sketch\n", "")]
    [InlineData("6.35 mm", "6.35")]
    [InlineData("6.35 mm", "6,35 mm")]
    [InlineData("6.35 mm", "-6.35 mm")]
    [InlineData("6.35 mm", "\"#81\"")]
    [InlineData("6.35 mm", "6.35 MM")]
    [InlineData("420 kPa", "420 N")]
    [InlineData("area: 95 mm2", "area: 95 mm2, colour: red")]
    [InlineData("kind: casting", "kind: castin")]
    [InlineData("at-rest: low", "at-rest: off")]
    [InlineData("seats: [11, 12]", "seats: [11, 12, 13]")]
    [InlineData("{in: either, ", "{")]
    [InlineData("holds: line, spills-to: [converter, exhaust], ", "")]
    [InlineData("rest:     [[line, a], [b, exhaust]]", "rest: [line, a]")]
    [InlineData("{spring: 40 N, rate: 2 N/mm}", "{spring: 40 N, area: 2 mm2}")]
    [InlineData("between: [line, converter]", "between: [line]")]
    [InlineData("openings: [{at: 1, hole: 6 mm}", "openings: [{hole: 6 mm}")]
    [InlineData("{at: 1, hole: 6 mm}", "{at: 1, hole: 6 mm, area: 4 mm2}")]
    [InlineData("slot: 4 x 14 mm", "slot: 4 mm")]
    [InlineData("a: {}", "a:")]
    [InlineData("a: {}", "exhaust: {}")]
    [InlineData("a: {}", "x.y: {}")]
    [InlineData("front: {between", "length: {between")]
    [InlineData("  cover:\n", "  input:\n")]
    [InlineData("plates: 10", "plates: ten")]
    [InlineData("plates: 10", "plates: 0")]
    [InlineData("area: 9800 mm2", "area:")]
    [InlineData("apply: [direct, low-reverse]", "apply: direct")]
    [InlineData(", apply: []", "")]
    [InlineData("commands: {two: 500 kPa}", "commands: {two: 500 N}")]
    [InlineData("verdict: weak", "verdict: bad")]
    [InlineData("sun: 34, ", "")]
    [InlineData("output: rear.carrier", "")]
    [InlineData("[rear.ring, case]}", "[rear.ring]}")]
    [InlineData("efficiency: 0.85", "efficiency: 1.85")]
    [InlineData("grade: ISO VG 32", "grade: ISO VG 33")]
    [InlineData("revisions:\n      1: {openings", "revisions: {}\n    later:\n      1: {openings")]
    [InlineData("kind: sheet\n", "kind: sheet\n    marks: [a]\n")]
    [InlineData("kind: casting\n    passages", "kind: casting\n    based-on: 1\n    passages")]
    public void A_broken_file_is_refused_by_schema_and_reader(string right, string wrong)
    {
        Assert.Contains(right, Sketch, StringComparison.Ordinal);
        var at = Sketch.IndexOf(right, StringComparison.Ordinal);
        var broken = Sketch[..at] + wrong + Sketch[(at + right.Length)..];
        Assert.NotEqual("", Faults(broken));
        Assert.Null(CircuitReader.ReadText(broken, "broken.yaml").Unit);
    }

    [Theory]
    [InlineData("R: {lever", "\"R\": {lever")]
    [InlineData("body: 1, plate: 1", "body: \"1\", plate: '1'")]
    [InlineData("hole: 6 mm", "hole: \" 6mm \"")]
    [InlineData("efficiency: 0.85", "efficiency: \"85 %\"")]
    [InlineData("plates: 10", "plates: \"10\"")]
    [InlineData("ratio: 1.8", "ratio: \"-1.8\"")]
    [InlineData("\"#45\"", "'#45'")]
    [InlineData("spills-to: [converter, exhaust]", "spills-to: exhaust")]
    [InlineData("held-by:  [{spring: 40 N, rate: 2 N/mm}]", "held-by: {spring: 40 N}")]
    [InlineData("seats: [11, 12]", "seats: 11")]
    [InlineData("lube:     {front: [5, 6, 7]}", "lube: {front: 5, rest: [6]}\n          lubb: {front: [5, 6, 7]}", false)]
    public void Both_ways_to_write_a_thing_are_accepted_by_schema_and_reader(string one, string other, bool byReader = true)
    {
        Assert.Contains(one, Sketch, StringComparison.Ordinal);
        var text = Sketch.Replace(one, other, StringComparison.Ordinal);
        Assert.Equal("", Faults(text));
        Assert.Equal(byReader, CircuitReader.ReadText(text, "other.yaml").Unit is not null);
    }

    private static string Faults(string text) => Faults(YamlAsJson.Read(text));

    private static string Faults(JsonNode? node)
    {
        // The validator takes a JsonElement; unquoted N and 1 arrive as editors would see them.
        using var document = JsonDocument.Parse(node?.ToJsonString() ?? "null");
        var result = Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid
            ? ""
            : "invalid\n" + string.Join('\n', (result.Details ?? []).Where(detail => detail.Errors is not null).Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Select(error => $"{error.Key} {error.Value}"))}"));
    }
}
