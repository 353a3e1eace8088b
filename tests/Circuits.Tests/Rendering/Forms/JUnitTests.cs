using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using Circuits.Findings;
using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Rendering;

public class JUnitTests
{
    private static readonly XmlSchemaSet Schema = Load();

    [Fact]
    public void Reports_keep_to_the_schema()
    {
        Assert.Empty(Faults(Text(FormSamples.Report(FormSamples.Lost(), FormSamples.Note()), FormSamples.Unread())));
        Assert.Empty(Faults(Text()));
        Assert.NotEmpty(Faults(Text(FormSamples.Report()).Replace("testcase", "test", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_suite_a_file_and_a_case_for_each_thing_that_was_looked_at()
    {
        var lost = FormSamples.Lost();
        var warning = lost with { Severity = Severity.Warning, Rule = "control-changed" };
        var report = FormSamples.Report(lost, warning, FormSamples.Note()) with
        {
            Cases = [new("late", "gear R", [lost, warning]) { Outcome = "lost" }, new("late", "gear N", []), new("expect", "late: lost", []), new("expect", "late: lost", [lost])],
        };
        var root = XDocument.Parse(Text(report, FormSamples.Unread())).Root!;
        Assert.Equal("circuits check", (string?)root.Attribute("name"));
        Assert.Equal(("6", "2", "1"), Counts(root));
        var suite = root.Elements().First();
        Assert.Equal("sample.yaml", (string?)suite.Attribute("name"));
        Assert.Equal(("5", "2", "0"), Counts(suite));
        Assert.Equal(
            ["sample/file", "sample.late/gear R", "sample.late/gear N", "sample.expect/late: lost", "sample.expect/late: lost (2)"],
            suite.Elements("testcase").Select(it => $"{(string?)it.Attribute("classname")}/{(string?)it.Attribute("name")}"));
        var cases = suite.Elements("testcase").ToList();
        Assert.Contains("assumed-size", cases[0].Element("system-out")!.Value);
        Assert.Null(cases[0].Element("failure"));
        var failure = cases[1].Element("failure")!;
        Assert.Equal("lost-supply", (string?)failure.Attribute("type"));
        Assert.Equal(lost.Words(), (string?)failure.Attribute("message"));
        Assert.Contains("sample.yaml:41:9: error lost-supply: ", failure.Value);
        Assert.Contains("Fit plate 2.", failure.Value);
        Assert.Contains("control-changed", cases[1].Element("system-out")!.Value);
        Assert.Equal("lost", (string?)cases[1].Attribute("status"));
        Assert.Empty(cases[2].Elements());
        Assert.Equal("not-yaml", (string?)root.Elements().Last().Elements("testcase").Single().Element("error")!.Attribute("type"));
    }

    [Fact]
    public void Without_cases_what_findings_name_makes_them()
    {
        var lost = FormSamples.Lost();
        var suite = XDocument.Parse(Text(FormSamples.Report(lost, lost with { Gear = "2" }, lost with { Gear = null }, FormSamples.Note()))).Root!.Elements().Single();
        Assert.Equal(["file", "gear R", "gear 2", "every gear"], suite.Elements("testcase").Select(it => (string?)it.Attribute("name")));
        Assert.Equal("sample.body=2, plate=1", (string?)suite.Elements("testcase").ElementAt(1).Attribute("classname"));
    }

    // XML 1.0, 2.2: only a tab, a line feed, a carriage return and what is neither control nor noncharacter nor half a pair can be written.
    [Theory]
    [InlineData("<a href=\"x\">&'")]
    [InlineData("]]>")]
    [InlineData("\u0000\u0001\u001B[31m\uFFFE\uFFFF")]
    [InlineData("\uD83D alone, \U0001F600 whole, \uDE00 alone")]
    [InlineData("two\nlines\r\nand\ta tab")]
    public void Whatever_a_file_says_can_be_read_back(string text)
    {
        var finding = FormSamples.Lost() with { Message = Phrase.Of($"{text}"), Help = text, Place = new Place(text, 1, 1) };
        var report = new FindingReport(text, Samples.Unit, [finding]) { Cases = [new(text, text, [finding])] };
        var written = Text(report);
        Assert.Empty(Faults(written));
        Assert.DoesNotContain('\r', written);
        if (text[0] is '<' or ']') Assert.Equal(text, (string?)XDocument.Parse(written).Descendants("failure").Single().Attribute("message"));
    }

    internal static List<string> Faults(string text)
    {
        var faults = new List<string>();
        XDocument.Parse(text).Validate(Schema, (_, fault) => faults.Add(fault.Message));
        return faults;
    }

    private static (string?, string?, string?) Counts(XElement element) =>
        ((string?)element.Attribute("tests"), (string?)element.Attribute("failures"), (string?)element.Attribute("errors"));

    private static string Text(params FindingReport[] reports) => FindingForms.Of(OutputFormat.JUnit, reports, FormSamples.Context);

    private static XmlSchemaSet Load()
    {
        using var reader = XmlReader.Create(FormSamples.SchemaFile("junit.xsd"));
        var schemas = new XmlSchemaSet();
        schemas.Add(null, reader);
        schemas.Compile();
        return schemas;
    }
}
