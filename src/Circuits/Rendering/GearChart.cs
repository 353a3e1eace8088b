using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>The chart: a row for each gear, a column for each clutch, then what it comes to.</summary>
internal static class GearChart
{
    private const int Gap = 2;
    private const int NarrowestFeels = 12;
    private const string DependsOnHistory = "depends on the gear it is reached from";

    public static void Write(Page page, AssemblyReport report)
    {
        var gears = report.Gears;
        if (gears.IsEmpty) return;
        var clutches = gears[0].Clutches;
        var drives = gears.Any(gear => gear.Drive is not null);
        var rest = Width("gear", gears.Select(GearCell)) + Gap + Width("verdict", gears.Select(gear => Words.Of(gear.Verdict)))
            + (drives ? Gap + Width("ratio", gears.Select(gear => Ratio(gear.Drive?.Ratio))) + Gap + NarrowestFeels : 0);
        var marks = Width("", gears.SelectMany(gear => gear.Clutches.Select(clutch => ClutchMark.Of(gear, clutch).Text)));
        var columns = ClutchColumns.Fitting([.. clutches.Select(clutch => clutch.Clutch)], marks, page.IsPlain ? int.MaxValue : page.Options.Width - rest);
        for (var first = 0; first == 0 || first < clutches.Length; first += columns.PerChart)
        {
            if (first > 0) page.Blank();
            var shown = Enumerable.Range(first, Math.Min(columns.PerChart, clutches.Length - first)).ToImmutableArray();
            page.Put(Chart(page, gears, shown, columns, first == 0 && drives, first == 0));
        }

        if (!page.IsPlain) Legend(page, gears);
    }

    private static Grid Chart(
        Page page, ImmutableArray<GearReport> gears, ImmutableArray<int> clutches, ClutchColumns columns, bool drives, bool verdict)
    {
        var table = Page.Table();
        table.AddColumn(page.Column("gear"));
        foreach (var index in clutches)
            table.AddColumn(page.Column(ClutchColumns.HeadingLines(gears[0].Clutches[index].Clutch, columns.Heading), gears[0].Clutches[index].Clutch, gap: columns.Gap));
        if (verdict) table.AddColumn(page.Column("verdict", gap: drives ? Gap : 0));
        if (drives) table.AddColumn(page.Column("ratio", right: true));
        if (drives) table.AddColumn(page.Column("the driver feels", wrap: true, gap: 0));
        foreach (var gear in gears)
        {
            var style = VerdictStyle(gear.Verdict);
            List<GridCell> row = [page.Cell(GearCell(gear), Page.Strong, gear.DependsOnHistory ? $"{gear.Gear} ({DependsOnHistory})" : gear.Gear)];
            foreach (var index in clutches)
            {
                var mark = ClutchMark.Of(gear, gear.Clutches[index]);
                row.Add(page.Cell(mark.Text, mark.Style, mark.Meaning));
            }

            if (verdict) row.Add(page.Cell(Words.Of(gear.Verdict), style));
            if (drives) row.Add(page.Cell(Ratio(gear.Drive?.Ratio)));
            if (drives) row.Add(page.Cell(gear.Drive is { } felt ? FeelWords.Of(felt.Feel) : "", gear.Verdict == Verdict.AsCharted ? Page.Plain : style));
            table.AddRow([.. row]);
        }

        return table;
    }

    /// <summary>A ratio with two places and its sign, or a dash.</summary>
    public static string Ratio(double? ratio) => ratio?.ToString("0.00", CultureInfo.InvariantCulture) ?? "-";

    /// <summary>The style that a verdict is written in.</summary>
    public static Style VerdictStyle(Verdict verdict) => verdict switch
    {
        Verdict.AsCharted => Page.Good,
        Verdict.Weak => Page.Doubtful,
        _ => Page.Bad,
    };

    private static int Width(string heading, IEnumerable<string> cells) => cells.Prepend(heading).Max(Cells.Of);

    private static string GearCell(GearReport gear) => gear.DependsOnHistory ? gear.Gear + "*" : gear.Gear;

    private static void Legend(Page page, ImmutableArray<GearReport> gears)
    {
        var used = gears.SelectMany(gear => gear.Clutches.Select(clutch => ClutchMark.Of(gear, clutch))).ToHashSet();
        var entries = ClutchMark.All.Where(used.Contains).Select(mark => $"{mark.Text} {mark.Meaning}").ToList();
        if (gears.Any(gear => gear.DependsOnHistory)) entries.Add($"* {DependsOnHistory}");
        if (entries.Count == 0) return;
        page.Blank();
        page.Flow(entries, Page.Faint);
    }
}
