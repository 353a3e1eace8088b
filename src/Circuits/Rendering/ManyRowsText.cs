using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering;

/// <summary>Many "what if" as a table, a row each.</summary>
public static class ManyRowsText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="mode">What verdicts rest on.</param>
    /// <param name="points">The conditions at which gears were judged.</param>
    /// <param name="rows">The rows.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(Unit unit, JudgeMode mode, ImmutableArray<OperatingPoint> points, ImmutableArray<ManyRow> rows, TextOptions options)
    {
        var page = new Page(options);
        page.Item("unit    ", 0, null, (unit.Name, Page.Strong), ($" (data: {Words.Of(unit.Data)})", Page.Plain));
        GearsText.JudgedBy(page, mode, points);
        page.Item("jobs    ", $"{Words.Count(rows.Length, "job")}, {rows.Count(row => row.IsGood)} with nothing to complain of{(mode == JudgeMode.Full ? "" : "; changes of gear are not timed")}", indent: 0);
        page.Blank();
        var table = Page.Table();
        table.AddColumn(page.Column("job", wrap: true));
        table.AddColumn(page.Column("verdict"));
        table.AddColumn(page.Column("gears and changes of gear that are not as they should be", wrap: true, gap: 0));
        foreach (var row in rows)
        {
            var wrong = row.Verdicts.Index().Where(pair => pair.Item != Verdict.AsCharted).GroupBy(pair => pair.Item).OrderByDescending(group => group.Key)
                .Select(group => $"{Words.Of(group.Key)} in {string.Join(", ", group.Select(pair => unit.Gears[pair.Index].Name))}");
            var badly = row.Changes.Where(change => change.Verdict != ShiftVerdict.Good).GroupBy(change => change.Verdict).OrderByDescending(group => group.Key)
                .Select(group => $"{VerdictText.Of(group.Key)} in {string.Join(", ", group.Select(pair => pair.Change))}");
            table.AddRow(page.Cell(row.Name), page.Cell(Words.Of(row.Verdict), GearChart.VerdictStyle(row.Verdict)), page.Cell(string.Join("; ", wrong.Concat(badly))));
        }

        page.Put(table);
        PageEnding.Cautions(page, [Cautions.WhoDecides]);
        return page.ToString();
    }
}
