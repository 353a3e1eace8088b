using System.Globalization;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Pages;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Rendering;

/// <summary>The page to hand over, read by a parser of HTML that is not ours. A real browser opens it in the checks of a clean clone.</summary>
public sealed class ReportPageTests
{
    private const string Hostile = "<script>alert(1)</script> \"q\" 'a' ]]> & \u05d0\u05d1 \U0001F527 \u001b[31m \u202e";

    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void A_page_stands_alone(string name)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var page = Page(unit, shifts: name == "rill");
        Assert.Empty(page.QuerySelectorAll("img, link, iframe, object, embed, base, form, [src], [action], [onclick], [onload]"));
        Assert.All(page.QuerySelectorAll("[href]"), link => Assert.StartsWith("#", link.GetAttribute("href"), StringComparison.Ordinal));
        Assert.All(page.QuerySelectorAll("a[href]"), link => Assert.NotNull(page.GetElementById(link.GetAttribute("href")![1..])));
        Assert.DoesNotContain("url(http", page.DocumentElement.OuterHtml, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content"), StringComparison.Ordinal);
        var ids = page.QuerySelectorAll("[id]").Select(element => element.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.Equal(unit.Gears.Length, page.QuerySelectorAll(".gear svg").Length);
        Assert.Equal(unit.Gears.Select(gear => gear.Name), page.QuerySelectorAll(".picker a").Select(link => link.TextContent));
    }

    [Fact]
    public void The_verdict_comes_first_and_every_drawing_is_told_in_words()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml")).Unit!;
        var page = Page(unit, shifts: true, fit: "2");
        Assert.Equal(
            ["verdict", "complaint", "evidence", "cause", "gears", "shifts", "correction", "expected", "parts", "assumptions", "cautions", "made"],
            page.QuerySelectorAll("section").Select(section => section.Id));
        Assert.Equal("lost in R", page.QuerySelector("#verdict .verdict")!.TextContent);
        Assert.Contains("Do not drive", page.QuerySelector("#verdict")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("fit body 2 instead of 1", page.QuerySelector("#correction")!.TextContent, StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll(".gear svg"), drawing =>
        {
            Assert.Contains("Clutch high", drawing.QuerySelector("desc")!.TextContent, StringComparison.Ordinal);
            Assert.StartsWith("Rill 2, gear ", drawing.QuerySelector("title")!.TextContent, StringComparison.Ordinal);
        });
        Assert.Equal(4, page.QuerySelectorAll("#shifts tbody tr").Length);
    }

    [Fact]
    public void What_is_given_stays_text()
    {
        var unit = CircuitCase.Body("line", "regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}", "", "pump: {into: body.line}").Unit with { Name = Hostile };
        var text = Write(unit, new JobGiven(Hostile, [Hostile], [Hostile], [new FileMark(Hostile, "0123")]), false, null);
        var page = Parse(text);
        Assert.Single(page.QuerySelectorAll("script"));
        foreach (var part in new[] { "h1", "#complaint", "#notes", "#made" })
            Assert.Contains("<script>alert(1)</script> \"q\" 'a' ]]> & \u05d0\u05d1 \U0001F527 \\u001B[31m \\u202E", page.QuerySelector(part)!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(text, letter => char.IsControl(letter) && letter != '\n');
        Assert.DoesNotContain('\u202e', text);
    }

    [Fact]
    public void A_unit_with_one_gear_and_nothing_else_has_a_page()
    {
        var page = Page(CircuitCase.Body("line", "marks: [none]", "").Unit, shifts: false);
        Assert.Single(page.QuerySelectorAll(".gear"));
        Assert.Null(page.QuerySelector("#expected"));
        Assert.Contains("no gear train", page.QuerySelector("#complaint")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml")).Unit!;
        var given = new JobGiven(null, [], [], []);
        Assert.Equal(Write(unit, given, true, null), Write(unit, given, true, null));
    }

    private static IDocument Page(Unit unit, bool shifts, string? fit = null) => Parse(Write(unit, new JobGiven(null, [], [], []), shifts, fit));

    private static IDocument Parse(string text) => new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(text);

    private static string Write(Unit unit, JobGiven given, bool withShifts, string? plate)
    {
        var judge = new UnitJudge(unit);
        var assembly = Assembly.DefaultOf(unit);
        if (plate is not null)
            assembly = Assembly.Of(unit, [.. unit.Parts.Select((part, i) => part.Name == "plate" ? part.FindRevision(plate)! : assembly.Revisions[i])]);
        var sheet = JobSheet.Of(judge, assembly, given, new RemedyOptions(), CancellationToken.None);
        var shifts = withShifts ? ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit), ShiftPlans.Of(unit)) : null;
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        ReportPage.Write(text, new PageReport(sheet, AssemblyViews.Of(judge, assembly), shifts, ["circuits", "report"], "1.0"), UnitSystem.Si);
        return text.ToString();
    }
}
