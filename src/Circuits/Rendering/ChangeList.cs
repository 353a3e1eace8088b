using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;

namespace Circuits.Rendering;

/// <summary>What the changes of gear of an assembly come to, as part of a page.</summary>
internal static class ChangeList
{
    /// <summary>Those that are not good, each with its reason; or that all are.</summary>
    /// <param name="page">The page.</param>
    /// <param name="report">The report.</param>
    public static void Write(Page page, AssemblyReport report)
    {
        if (report.Changes.IsEmpty) return;
        var wrong = report.Changes.Where(change => change.Verdict != ShiftVerdict.Good).ToList();
        page.Heading("Changes of gear");
        var names = report.Changes.Select(change => change.Plan.Name).Distinct().Count();
        if (wrong.Count < report.Changes.Length)
        {
            var at = string.Join(", ", report.Changes.Select(change => change.At).Distinct().Select(point => page.Words(point.InFull)));
            page.Line($"{(wrong.Count == 0 ? "all good" : "all others good")}: {Words.Count(names, "change")} timed, each at those of its conditions: {at}", Page.Plain, indent: 2);
        }

        foreach (var alike in ChangeReport.Alike(wrong)) Write(page, alike);
    }

    /// <summary>Changes whose outcome differs.</summary>
    /// <param name="page">The page.</param>
    /// <param name="before">The changes before.</param>
    /// <param name="after">The changes after.</param>
    public static void Differences(Page page, ImmutableArray<ChangeReport> before, ImmutableArray<ChangeReport> after)
    {
        var differing = before.Zip(after).Where(pair => pair.First.Verdict != pair.Second.Verdict).ToList();
        if (differing.Count == 0) return;
        page.Heading("Changes of gear");
        foreach (var alike in differing.GroupBy(pair => (pair.Second.Plan.Name, pair.Second.Verdict, pair.Second.Here.Reason, Was: pair.First.Verdict)))
        {
            var (was, now) = alike.First();
            page.Item(
                $"{now.Plan.Name}", 2, ShiftsText.Style(now.Verdict),
                ($"at {Names(alike.Select(pair => pair.Second))}: {VerdictText.Of(now.Verdict)} (was {VerdictText.Of(was.Verdict)}){(now.Here.Reason.IsEmpty ? "" : $": {page.Words(now.Here.Reason)}")}", Page.Plain));
        }
    }

    /// <summary>What is wrong on one line: <c>; flare in 2-3; never-holds in 1-2</c>; empty where nothing is.</summary>
    /// <param name="report">The report.</param>
    public static string Summary(AssemblyReport report)
    {
        var wrong = report.Changes.Where(change => change.Verdict != ShiftVerdict.Good && !change.SharedByMatched)
            .GroupBy(change => change.Verdict).OrderByDescending(group => group.Key)
            .Select(group => $"{VerdictText.Of(group.Key)} in {string.Join(", ", group.Select(change => change.Plan.Name).Distinct())}").ToList();
        return wrong.Count == 0 ? "" : "; " + string.Join("; ", wrong);
    }

    private static string Names(IEnumerable<ChangeReport> alike) => string.Join(", ", alike.Select(change => change.At.Name));

    private static void Write(Page page, ImmutableArray<ChangeReport> alike)
    {
        var change = alike[0];
        var shared = change.SharedByMatched ? " (the matched set does no better)" : "";
        page.Item($"{change.Plan.Name}", 2, ShiftsText.Style(change.Verdict), ($"at {Names(alike)}: {VerdictText.Of(change.Verdict)}: {page.Words(change.Here.Reason)}{shared}", Page.Plain));
    }
}
