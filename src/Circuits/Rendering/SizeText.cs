using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Studies.Sizing;

namespace Circuits.Rendering;

/// <summary>A hole for a wanted time, as a page.</summary>
public static class SizeText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(SizeReport report, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Assembly, report.NearestMatched);
        page.Item("wanted  ", Wanted(report), indent: 0);
        page.Item("now     ", report.Now is { } now ? $"{Size(page, now)}: {Time(now.Ms)}" : "metal, or an opening without a size", indent: 0);
        page.Item("hole    ", 0, null, report.Outcome == SizeOutcome.Found
            ? ($"{Size(page, report.Hole!)}: {Time(report.Hole!.Ms)}", Page.Good)
            : (page.Words(report.Reason), Page.Bad));
        if (report.Outcome == SizeOutcome.Found) Found(page, report);
        else Tried(page, report);
        if (report.Spread is { } spread) SpreadText.Sizes(page, spread);
        PageEnding.Assumptions(page, report.Assumptions);
        PageEnding.Cautions(page, CautionsOf(report));
        return page.ToString();
    }

    /// <summary>What a person who takes up the drill must be told.</summary>
    /// <param name="report">The report.</param>
    internal static ImmutableArray<string> CautionsOf(SizeReport report) =>
    [
        .. report.Work is { CanBeUndone: false } ? new[] { Cautions.Drilling } : [],
        Cautions.WhoDecides,
    ];

    internal static string Wanted(SizeReport report)
    {
        var what = report.Request.Time switch
        {
            WantedTime.Fill => $"{report.Clutch} touches after",
            WantedTime.Hold => "the gear holds after",
            WantedTime.Release => $"{report.Clutch} lets go after",
            _ => "from letting go to holding",
        };
        return FormattableString.Invariant($"{report.Request.Shift.Name}: {what} {report.Request.Ms:0.#} ms, by a hole at {report.Request.Location}");
    }

    private static void Found(Page page, SizeReport report)
    {
        foreach (var (name, drill) in new[] { ("below   ", report.DrillBelow), ("above   ", report.DrillAbove) })
            page.Item(name, drill is null ? "no number drill" : $"#{drill.Drill}, {Size(page, drill)}: {Time(drill.Ms)}", indent: 0);
        if (report.Work is { } work) page.Item("work    ", page.Words(work.Text) + (work.CanBeUndone ? "" : "; cannot be undone"), indent: 0);
        if (report.Solutions > 1) page.Item("note    ", FormattableString.Invariant($"{report.Solutions} holes give this time; this is the one nearest to the hole as it is"), indent: 0);
        page.Heading(report.Shifts.IsEmpty ? "No other shift changes" : "Shifts that this hole changes, ms");
        if (!report.Shifts.IsEmpty) Shifts(page, report.Shifts);
        if (report.Gears.IsEmpty) page.Heading("Every gear is as before");
        else WhatIfText.Gears(page, report.Gears, report.Assembly.Unit);
        WhatIfText.FindingList(page, "New findings", report.Findings, report.Assembly.Unit);
    }

    private static void Shifts(Page page, ImmutableArray<ShiftChange> shifts)
    {
        var table = Page.Table();
        table.AddColumn(page.Column("shift"));
        table.AddColumn(page.Column("clutch"));
        foreach (var heading in new[] { "touches", "lets go", "is off", "holds" }) table.AddColumn(page.Column(heading, right: true));
        table.AddColumn(page.Column("verdict", gap: 0));
        foreach (var (before, after) in shifts)
        {
            var first = true;
            foreach (var (was, now) in before.Clutches.Zip(after.Clutches).Where(pair => pair.First.Role != ClutchRole.Holding))
            {
                table.AddRow(
                    page.Cell(first ? before.Plan.Name : "", Page.Strong), page.Cell(now.Clutch),
                    page.Cell(page.Change(Ms(was.FillMs), Ms(now.FillMs))), page.Cell(page.Change(Ms(was.LetsGoMs), Ms(now.LetsGoMs))), page.Cell(page.Change(Ms(was.ReleasedMs), Ms(now.ReleasedMs))),
                    page.Cell(first ? page.Change(Ms(before.HoldsMs), Ms(after.HoldsMs)) : ""),
                    page.Cell(first ? page.Change(VerdictText.Of(before.Verdict), VerdictText.Of(after.Verdict)) : ""));
                first = false;
            }
        }

        page.Put(table);
    }

    private static void Tried(Page page, SizeReport report)
    {
        page.Heading("Holes that were tried");
        page.Flow(report.Tried.Select(hole => $"{Size(page, hole)}: {Time(hole.Ms)}"), Page.Plain);
    }

    private static string Ms(double? value) => value is { } ms ? ms.ToString("0", CultureInfo.InvariantCulture) : "-";

    private static string Time(double? value) => value is { } ms ? FormattableString.Invariant($"{ms:0.#} ms") : "never";

    private static string Size(Page page, SizedHole hole) => Measures.Length(hole.Millimetres, page.Options.Units);
}
