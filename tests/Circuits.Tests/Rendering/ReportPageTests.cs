using System.Text.RegularExpressions;
using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Rendering;

/// <summary>The report as a page; what a browser makes of it, <c>.ci/pages.mjs</c> looks at.</summary>
public sealed partial class ReportPageTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void EverythingStandsOnThePageVerdictFirst()
    {
        var page = Write(Path.Combine(Repository.Root, "circuits/rill/rill.yaml"), "--fit", "plate=2", "--complaint", "no reverse");
        var order = new[] { "Verdict: lost in R", "no reverse", ">Gears<", ">Cause<", "id=\"pick-0\"", "class=\"oil-circuit\"", "id=\"shift-0-title\"", ">Correction<", "Checks to make", ">Assumptions<", ">Cautions<", "SHA-256", "report " };
        var at = 0;
        foreach (var piece in order)
        {
            var next = page.IndexOf(piece, at, StringComparison.Ordinal);
            Assert.True(next >= 0, $"{piece} does not follow");
            at = next;
        }

        Assert.Contains("--complaint &#39;no reverse&#39;", page, StringComparison.Ordinal);
        Assert.Equal(4, Gears().Count(page));
    }

    [Fact]
    public void EveryClutchHasItsReasonsAndWhatIsWrongShowsThem()
    {
        var page = Write(Path.Combine(Repository.Root, "circuits/rill/rill.yaml"), "--fit", "plate=2", "--units", "shop");
        Assert.Equal(4 * 3, Regex.Count(page, "<details class=\"reasons\""));
        Assert.Matches("<details class=\"reasons\" open><summary>Why high is released</summary>", page);
        Assert.Equal(1, Regex.Count(page, "<details class=\"reasons\" open><summary>Why [a-z-]+ is released"));
        Assert.Contains("drains to body.second through plate@6-7", page, StringComparison.Ordinal);
        Assert.Contains("<ul>\n<li>ball body.two-way closes plate@12", page, StringComparison.Ordinal);
        Assert.Equal(Regex.Count(page, "<ul>"), Regex.Count(page, "</ul>"));
        Assert.DoesNotContain(">kPa<", page, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageAsksForNothing()
    {
        var page = Write(Path.Combine(Repository.Root, "circuits/weir/weir.yaml"));
        Assert.DoesNotMatch("(src|href)=\"(?!#)", page);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"url\((?!#)", page);
        var ids = Ids().Matches(page).Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("]]> \\\"quoted\\\" & 'twice'")]
    [InlineData("\u05E9\u05DC\u05D5\u05DD from right to left")]
    [InlineData("\U0001F527 \u4E2D\u6587 e\u0301")]
    public void HostileNamesStayText(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "circuits/rill/rill.yaml"));
        var file = Path.Combine(folder, "unit.yaml");
        File.WriteAllText(file, UnitName().Replace(text, $"unit: \"{name}\""));
        var page = Write(file, "--complaint", "<b>bold</b> \u202Etfel \u001B[31mred");
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>bold", page, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001B', page);
        Assert.DoesNotContain('\u202E', page);
        Assert.Equal(1, Regex.Count(page, "<script"));
    }

    [Fact]
    public void WhatIsNoPageIsRefused()
    {
        using var error = new StringWriter();
        var unit = Path.Combine(Repository.Root, "circuits/rill/rill.yaml");
        Assert.Equal(2, CommandLine.Run(["report", unit, "--format", "markdown"], new Surroundings(TextWriter.Null, error)));
        Assert.Contains("a page is written as HTML", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(2, CommandLine.Run(["report", unit, "--form", "job", "--format", "html"], new Surroundings(TextWriter.Null, error)));
    }

    private static string Write(string file, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.True(CommandLine.Run(["report", file, .. words], new Surroundings(output, error)) < 2, error.ToString());
        return output.ToString();
    }

    [GeneratedRegex("<section class=\"gear\"")]
    private static partial Regex Gears();

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("^unit: .*$", RegexOptions.Multiline)]
    private static partial Regex UnitName();
}
