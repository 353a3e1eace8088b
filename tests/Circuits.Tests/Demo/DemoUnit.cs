using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>A unit of the demo library, and what the judge says of any assembly of it.</summary>
internal sealed class DemoUnit
{
    private readonly Dictionary<string, AssemblyReport> reports = [];

    /// <summary>Reads a unit file of the demo library.</summary>
    /// <param name="file">The file, below <c>circuits</c>.</param>
    /// <param name="mode">What verdicts rest on.</param>
    public DemoUnit(string file, JudgeMode mode = JudgeMode.Full)
    {
        var read = CircuitReader.ReadFile(Path.Combine(Library, file));
        Assert.Equal([], read.Findings.Select(Line));
        Unit = Assert.IsType<Unit>(read.Unit);
        Judge = new UnitJudge(Unit, mode);
    }

    /// <summary>The library's folder.</summary>
    public static string Library { get; } = Path.Combine(Root(), "circuits");

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>Its judge.</summary>
    public UnitJudge Judge { get; }

    /// <summary>The report on an assembly, worked out once.</summary>
    /// <param name="choice">A revision for each part that has several, in the order of the file.</param>
    public AssemblyReport Report(params ReadOnlySpan<string> choice)
    {
        var key = string.Join(' ', choice.ToArray());
        if (!reports.TryGetValue(key, out var report)) reports[key] = report = Judge.Report(Pick(choice));
        return report;
    }

    /// <summary>The assembly of those revisions.</summary>
    /// <param name="choice">A revision for each part that has several, in the order of the file.</param>
    public Assembly Pick(params ReadOnlySpan<string> choice)
    {
        var revisions = new List<Revision>();
        var next = 0;
        foreach (var part in Unit.Parts)
            revisions.Add(part.Revisions.Length == 1 ? part.Revisions[0] : Assert.IsType<Revision>(part.FindRevision(choice[next++])));
        Assert.Equal(choice.Length, next);
        return Assembly.Of(Unit, [.. revisions]);
    }

    /// <summary>The report on a matched set.</summary>
    /// <param name="set">Its name.</param>
    public AssemblyReport Matched(string set) => Judge.Report(Assembly.Of(Unit, Unit.Matched.Single(each => each.Name == set)));

    /// <summary>A gear of a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="gear">The gear's name.</param>
    public static GearReport Gear(AssemblyReport report, string gear) => report.Gears.Single(each => each.Gear == gear);

    /// <summary>A clutch in a gear of a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="gear">The gear's name.</param>
    /// <param name="clutch">The clutch's name.</param>
    public static ClutchReport Clutch(AssemblyReport report, string gear, string clutch) =>
        Gear(report, gear).Clutches.Single(each => each.Clutch == clutch);

    /// <summary>Every gear that is not as charted, and its verdict: <c>R weak, 2 lost</c>.</summary>
    /// <param name="report">The report.</param>
    public static string Wrong(AssemblyReport report) => string.Join(
        ", ", report.Gears.Where(gear => gear.Verdict != Verdict.AsCharted).Select(gear => $"{gear.Gear} {Word(gear.Verdict)}"));

    /// <summary>The gears that depend on history.</summary>
    /// <param name="report">The report.</param>
    public static string Remembering(AssemblyReport report) =>
        string.Join(", ", report.Gears.Where(gear => gear.DependsOnHistory).Select(gear => gear.Gear));

    /// <summary>A finding as one line.</summary>
    /// <param name="finding">The finding.</param>
    public static string Line(Finding finding) =>
        $"{Path.GetFileName(finding.Place.File)}:{finding.Place.Line}: {finding.Rule} in {finding.Gear}: {finding.Words()}";

    private static string Word(Verdict verdict) => VerdictText.Of(verdict);

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Circuits.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
