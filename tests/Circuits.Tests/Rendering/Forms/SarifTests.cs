using System.Text.Json;
using System.Text.Json.Nodes;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Reading;
using Circuits.Rendering;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Rendering;

public class SarifTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(
        File.ReadAllText(FormSamples.SchemaFile("sarif-2.1.0.json")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    [Fact]
    public void Logs_keep_to_the_schema()
    {
        Assert.True(IsValid(Text(FormSamples.Report(FormSamples.Lost(), FormSamples.Note()), FormSamples.Unread())));
        Assert.True(IsValid(Text()));
        Assert.True(IsValid(Text(FormSamples.Report([.. RuleCatalogue.All.Select(rule => rule.At(Place.None, $"x"))]))));
        Assert.False(IsValid(Text(FormSamples.Report(FormSamples.Lost())).Replace("\"error\"", "\"fatal\"", StringComparison.Ordinal)));
        Assert.False(IsValid("{}"));
    }

    [Fact]
    public void A_result_names_its_rule_level_place_and_second_places()
    {
        var run = Run(FormSamples.Report(FormSamples.Note(), FormSamples.Lost()));
        Assert.Equal(["assumed-size", "lost-supply"], run["tool"]!["driver"]!["rules"]!.AsArray().Select(rule => (string)rule!["id"]!));
        var result = run["results"]![1]!;
        Assert.Equal("lost-supply", (string)result["ruleId"]!);
        Assert.Equal(1, (int)result["ruleIndex"]!);
        Assert.Equal("error", (string)result["level"]!);
        Assert.Equal(
            "direct is not applied in R: its oil stops at plate@22 (54 of 772 kPa left). Fit plate 2.", (string)result["message"]!["text"]!);
        var place = result["locations"]![0]!["physicalLocation"]!;
        Assert.Equal("sample.yaml", (string)place["artifactLocation"]!["uri"]!);
        Assert.Equal("SRCROOT", (string)place["artifactLocation"]!["uriBaseId"]!);
        Assert.Equal((41, 9), ((int)place["region"]!["startLine"]!, (int)place["region"]!["startColumn"]!));
        Assert.NotNull(run["originalUriBaseIds"]!["SRCROOT"]);
        Assert.Equal("parts/plate.yaml", (string)result["relatedLocations"]![0]!["physicalLocation"]!["artifactLocation"]!["uri"]!);
        Assert.Equal("the clutch", (string)result["relatedLocations"]![0]!["message"]!["text"]!);
        Assert.Equal("R", (string)result["properties"]!["gear"]!);
        Assert.Equal("2", (string)result["properties"]!["assembly"]!["body"]!);
        Assert.Equal("note", (string)run["results"]![0]!["level"]!);
        Assert.Null(run["results"]![0]!["locations"]![0]!["physicalLocation"]!["region"]!["startColumn"]);
        Assert.True((bool)run["invocations"]![0]!["executionSuccessful"]!);
    }

    [Fact]
    public void The_help_of_a_rule_is_what_explain_tells()
    {
        var rule = RuleCatalogue.Find("lost-supply")!;
        var help = Run(FormSamples.Report(FormSamples.Lost()))["tool"]!["driver"]!["rules"]![0]!["help"]!;
        foreach (var form in (string[])["text", "markdown"])
            Assert.All([rule.Meaning, rule.OnTheRoad, rule.Example, rule.Mend], sentence => Assert.Contains(sentence, (string)help[form]!));
    }

    [Fact]
    public void A_file_that_could_not_be_read_makes_the_run_unsuccessful() =>
        Assert.False((bool)Run(FormSamples.Report(), FormSamples.Unread())["invocations"]![0]!["executionSuccessful"]!);

    [Theory]
    [InlineData("sub folder/a#b?c%d.yaml", "sub%20folder/a%23b%3Fc%25d.yaml", true)]
    [InlineData("./x:y.yaml", "x%3Ay.yaml", true)]
    [InlineData("/shop/units/deep/é.yaml", "deep/%C3%A9.yaml", true)]
    [InlineData("../other/a b.yaml", "file:///shop/other/a%20b.yaml", false)]
    [InlineData("..yaml", "..yaml", true)]
    public void Files_are_named_from_the_root_where_they_lie_below_it(string file, string uri, bool based)
    {
        var finding = FormSamples.Lost() with { Place = new Place(file, 1, 1) };
        var location = Run(FormSamples.Report(finding))["results"]![0]!["locations"]![0]!["physicalLocation"]!["artifactLocation"]!;
        Assert.Equal(uri, (string)location["uri"]!);
        Assert.Equal(based, location["uriBaseId"] is not null);
        Assert.True(Uri.IsWellFormedUriString(uri, UriKind.RelativeOrAbsolute));
    }

    [Fact]
    public void What_stands_nowhere_is_told_of_the_file()
    {
        var place = Run(FormSamples.Report(FormSamples.Lost() with { Place = Place.None }))["results"]![0]!["locations"]![0]!["physicalLocation"]!;
        Assert.Equal("sample.yaml", (string)place["artifactLocation"]!["uri"]!);
        Assert.Null(place["region"]);
    }

    [Fact]
    public void Lines_written_above_a_finding_leave_its_fingerprint()
    {
        var before = Fingerprints(FormSamples.Lost(41), FormSamples.Note());
        Assert.Equal(before, Fingerprints(FormSamples.Lost(58), FormSamples.Note()));
        Assert.Equal(before, Fingerprints(FormSamples.Lost(41, left: 61.5, of: 780), FormSamples.Note()));
    }

    [Fact]
    public void What_a_finding_is_about_makes_its_fingerprint()
    {
        var lost = FormSamples.Lost();
        var all = Fingerprints(
            lost, lost, lost with { Gear = "2" }, lost with { Rule = "weak-supply" }, lost with { Assembly = [] },
            FormSamples.Lost(at: "plate@23"),
            lost with { Place = new Place("other.yaml", 41, 9) });
        Assert.Equal(7, all.Distinct().Count());
    }

    // SARIF 2.1.0, 3.14.17: columnKind says what a column counts. The reader is asked, not the renderer.
    [Fact]
    public void Columns_count_utf16_code_units()
    {
        const string line = "expect: [{because: \"\U0001F600\", verdct: lost}]";
        var text = File.ReadAllText(Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml"));
        var bad = text[..text.IndexOf("\nexpect:", StringComparison.Ordinal)] + "\n" + line + "\n";
        var finding = CircuitReader.ReadText(bad, "rill.yaml").Findings.Single(found => found.Words().Contains("verdct", StringComparison.Ordinal));
        Assert.Equal(line.IndexOf("verdct", StringComparison.Ordinal) + 1, finding.Place.Column);
        Assert.Equal("utf16CodeUnits", (string)Run(FormSamples.Report())["columnKind"]!);
    }

    private static List<string> Fingerprints(params Finding[] findings) =>
        [.. Run(FormSamples.Report([.. findings]))["results"]!.AsArray().Select(result => (string)result!["partialFingerprints"]!["finding/v2"]!)];

    private static JsonNode Run(params FindingReport[] reports) => JsonNode.Parse(Text(reports))!["runs"]![0]!;

    private static string Text(params FindingReport[] reports) => FindingForms.Of(Circuits.Rendering.OutputFormat.Sarif, reports, FormSamples.Context);

    internal static bool IsValid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
