using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Changes;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>What changes do to an assembly, as a page: only what differs.</summary>
public static class WhatIfText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="job">What the changes are for, or null.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(WhatIfReport report, string? job, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Before.Assembly, report.Before.NearestMatched);
        if (job is not null) page.Item("job     ", job, indent: 0);
        ChangeLines.Write(page, report.Changes);
        GearsText.JudgedBy(page, report.After.Mode, report.After.Points);
        if (report.After.Assembly.Matched is { } set) page.Item("then    ", $"matched: {set}", indent: 0);
        page.Item("verdict ", 0, null, Verdict(report));
        if (!report.Differs)
        {
            page.Blank();
            page.Line("Nothing differs.");
        }

        Gears(page, report.Gears, report.After.Assembly.Unit);
        ChangeList.Differences(page, report.Before.Changes, report.After.Changes);
        FindingList(page, "New findings", report.NewFindings, report.After.Assembly.Unit);
        FindingList(page, "Findings that are gone", report.VanishedFindings, report.After.Assembly.Unit);
        PageEnding.Cautions(page, Cautions.For(report.After, pressures: false));
        return page.ToString();
    }

    private static (string, Style)[] Verdict(WhatIfReport report)
    {
        var (before, after) = (GearsText.Summary(report.Before), GearsText.Summary(report.After));
        return before == after
            ? [($"{after}, as before", GearChart.VerdictStyle(report.After.Verdict))]
            : [(after, GearChart.VerdictStyle(report.After.Verdict)), ($" (before: {before})", Page.Plain)];
    }

    /// <summary>Gear by gear, so that each reads as one story; gears that differ alike are told together.</summary>
    internal static void Gears(Page page, ImmutableArray<GearDifference> gears, Unit unit)
    {
        var stories = gears.Select(gear => ((string?)gear.Gear, new Story([.. DifferenceLines.Of(gear, page.Options.Units)])));
        foreach (var (inGears, group) in GearLabels.Group(stories, [.. unit.Gears.Select(gear => gear.Name)]))
        {
            page.Blank();
            page.Line(inGears.Heading, Page.Strong);
            foreach (var line in group[0].Lines) page.Item(line.Mark, 2, line.Style, (line.Text, Page.Plain));
        }
    }

    internal static void FindingList(Page page, string heading, ImmutableArray<Finding> findings, Unit unit)
    {
        if (findings.IsEmpty) return;
        page.Heading(heading);
        GearsText.FindingGroups(
            page, findings.Select(finding => (finding.Gear, finding)),
            [.. unit.Gears.Select(gear => gear.Name)]);
    }
}

/// <summary>What differs in a gear; two are equal when they read the same.</summary>
internal sealed record Story(ImmutableArray<DifferenceLine> Lines)
{
    public bool Equals(Story? other) => other is not null && Lines.SequenceEqual(other.Lines);

    public override int GetHashCode() => Lines.IsEmpty ? 0 : Lines[0].GetHashCode();
}

/// <summary>Changes as a list at the head of a page.</summary>
internal static class ChangeLines
{
    public static void Write(Page page, ImmutableArray<Change> changes)
    {
        for (var i = 0; i < changes.Length; i++)
        {
            var undone = changes[i].CanBeUndone || changes[i] is AddLeak ? "" : "; cannot be undone";
            page.Item(i == 0 ? "changes " : "        ", page.Words(changes[i].Text) + undone, indent: 0);
        }
    }
}
