using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>The full unit, and short words for what its page says. Its judge is not for several threads: the tests that use it stand in one collection.</summary>
internal static class FullUnit
{
    private static readonly DemoUnit Demo = new("firth/firth.yaml");
    private static readonly DemoUnit Still = new("firth/firth.yaml", JudgeMode.Quick);

    /// <summary>The unit.</summary>
    public static Unit Unit => Demo.Unit;

    /// <summary>Its judge.</summary>
    public static UnitJudge Judge => Demo.Judge;

    /// <summary>The report on a matched set with some parts changed: <c>last</c>, <c>channel-gasket=1</c>.</summary>
    /// <param name="set">The matched set.</param>
    /// <param name="changes">Part and revision, several with spaces between; may be empty.</param>
    public static AssemblyReport Report(string set, string changes = "") => Report(Demo, set, changes);

    /// <summary>The same by the static answer, which the page reasons by.</summary>
    /// <param name="set">The matched set.</param>
    /// <param name="changes">Part and revision, several with spaces between; may be empty.</param>
    public static AssemblyReport StaticReport(string set, string changes = "") => Report(Still, set, changes);

    private static AssemblyReport Report(DemoUnit demo, string set, string changes)
    {
        var choice = Unit.Matched.Single(each => each.Name == set).Revisions.ToDictionary(pair => pair.Key, pair => pair.Value);
        foreach (var change in changes.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var words = change.Split('=');
            Assert.True(choice.ContainsKey(words[0]), change);
            choice[words[0]] = words[1];
        }

        return demo.Report([.. Unit.Parts.Where(part => part.Revisions.Length > 1).Select(part => choice[part.Name])]);
    }

    /// <summary>The gears in which a finding of that rule stands, in the order of the file.</summary>
    /// <param name="report">The report.</param>
    /// <param name="rule">The rule.</param>
    public static string GearsWith(AssemblyReport report, string rule) => string.Join(
        ' ', report.Gears.Select(gear => gear.Gear)
            .Where(gear => report.Findings.Any(finding => finding.Rule == rule && finding.Gear == gear)));

    /// <summary>The findings of error level, as rule names, each once, by name.</summary>
    /// <param name="report">The report.</param>
    public static string Errors(AssemblyReport report) => string.Join(
        ' ', report.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Rule).Distinct().Order(StringComparer.Ordinal));

    /// <summary>A file's line, trimmed.</summary>
    /// <param name="place">The place.</param>
    public static string Text(Place place) => File.ReadLines(place.File).ElementAt(place.Line - 1).Trim();

    /// <summary>The area of a round hole, mm2.</summary>
    /// <param name="diameter">Its diameter, mm.</param>
    public static double Hole(double diameter) => Math.PI / 4 * diameter * diameter;
}
