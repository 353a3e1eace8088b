using System.Text.Json;
using System.Text.Json.Nodes;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Rendering;

public class JsonTests
{
    private static readonly Rule Sample = new("lost-supply", Severity.Error, "m", "r", "e", "d");

    public static TheoryData<string, string> Written() => new()
    {
        { "gears", One(Documents.Of(Samples.Mix())) },
        { "gears", JsonText.Of([Documents.Of(Samples.Mix()), Documents.Of(Samples.Matched())]) },
        { "gears", One(Documents.Of(Samples.Mix() with { Gears = [Samples.Mix().Gears[0] with { Drive = null, LineKilopascals = double.NaN }] })) },
        { "trace", One(Documents.Of(Samples.Mixed, ["late"], [Samples.Trace()])) },
        { "check", One(Documents.Of(new CheckedFile("s.yaml", Samples.Unit, [Samples.Mix()], 1, 2, Samples.Mix().Findings))) },
        { "check", One(Documents.Of(new CheckedFile("s.yaml", null, [], 0, 0, [Sample.At(new Place("s.yaml", 0, 0), $"x")]))) },
        { "explain", One(Documents.Of([Sample])) },
    };

    [Theory]
    [MemberData(nameof(Written))]
    public void Documents_keep_to_their_schema(string name, string text) => Assert.True(IsValid(name, text), text);

    public static TheoryData<string> Names() => [.. JsonSchemas.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Schemas_are_valid_and_refuse_another_document(string name)
    {
        var text = JsonSchemas.Find(name)!;
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(text).RootElement).IsValid);
        Assert.False(IsValid(name, "{}"));
        Assert.False(IsValid(name, """{"schema": "circuits.other/1"}"""));
    }

    // Scripts rely on these names and their order; what was added comes after them.
    [Fact]
    public void The_gears_document_has_the_agreed_fields_in_the_agreed_order()
    {
        var document = JsonNode.Parse(One(Documents.Of(Samples.Mix())))!.AsObject();
        Assert.StartsWith("schema unit data assembly matched nearestMatched mode conditions assumptions gears changes findings", Fields(document));
        var gear = document["gears"]![0]!.AsObject();
        Assert.StartsWith("gear settled dependsOnHistory verdict condition conditions clutches crossFeeds drive", Fields(gear));
        var clutch = gear["clutches"]![0]!.AsObject();
        Assert.StartsWith("clutch charted state verdict level stoppedAt", Fields(clutch));
        Assert.StartsWith("element reason file line", Fields(clutch["stoppedAt"]!.AsObject()));
        Assert.StartsWith("into from through file line", Fields(document["gears"]![3]!["crossFeeds"]![0]!.AsObject()));
        Assert.StartsWith("mobility ratio feels", Fields(gear["drive"]!.AsObject()));
        Assert.StartsWith("rule severity message gear file line column", Fields(document["findings"]![0]!.AsObject()));
        Assert.Equal("circuits.gears/2", (string?)document["schema"]);
        Assert.Null(document["matched"]);
        Assert.Equal("2", (string?)document["assembly"]!["body"]);
        Assert.Equal("blanked", (string?)clutch["stoppedAt"]!["reason"]);
        Assert.Equal(41, (int)clutch["stoppedAt"]!["line"]!);
    }

    [Fact]
    public void Numbers_are_rounded_finite_and_never_minus_zero()
    {
        var clutch = Samples.Mix().Gears[0].Clutches[0] with { Level = 0.1 + 0.2, Kilopascals = -1e-9, Apply = new Control("gasket", double.PositiveInfinity, false, Place.None) };
        var gear = Samples.Mix().Gears[0] with { Clutches = [clutch] };
        var written = JsonNode.Parse(One(Documents.Of(Samples.Mix() with { Gears = [gear] })))!["gears"]![0]!["clutches"]![0]!;
        Assert.Equal("0.3", written["level"]!.ToJsonString());
        Assert.Equal("0", written["kilopascals"]!.ToJsonString());
        Assert.Null(written["apply"]!["squareMillimetres"]);
        Assert.Null(written["apply"]!["file"]);
    }

    [Fact]
    public void Text_keeps_its_letters_and_loses_its_controls()
    {
        var text = One(Documents.Of([Sample with { Meaning = "Ø 'drill' <漢> \u001B\u009B\u202E" }]));
        Assert.Contains("Ø 'drill' <漢>", text);
        Assert.DoesNotContain(text, letter => letter != '\n' && (char.IsControl(letter) || letter == '\u202E'));
    }

    private static string One(Document document) => JsonText.Of(document);

    private static string Fields(JsonObject fields) => string.Join(' ', fields.Select(field => field.Key));

    private static bool IsValid(string name, string text) =>
        Schema(name).Evaluate(JsonDocument.Parse(text).RootElement).IsValid;

    private static JsonSchema Schema(string name) =>
        JsonSchema.FromText(JsonSchemas.Find(name)!, new BuildOptions { SchemaRegistry = new SchemaRegistry() });
}
