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
    private const int NarrowestFeels = 16;
    private const double SameRatio = 0.005;

    public static void Write(Page page, AssemblyReport report)
    {
        var gears = report.Gears;
        if (gears.IsEmpty) return;
        var clutches = gears[0].Clutches;
        var drives = gears.Any(gear => gear.Drive is not null);
        var wanted = gears.Any(gear => gear.Drive is { } drive && Misses(drive));
        var fixedWidth = gears.Max(gear => GearCell(gear).GetCellWidth()) + Gap
            + gears.Max(gear => Words.Of(gear.Verdict).GetCellWidth())
            + (drives ? 7 + Gap + NarrowestFeels + Gap : 0) + (wanted ? 7 + Gap : 0);
        var room = page.Options.Width - fixedWidth;

        // The widest headings that fit; a chart that has no room for all its clutches goes on below.
        var heading = clutches.Select(clutch => clutch.Clutch.GetCellWidth()).DefaultIfEmpty(0).Max();
        while (heading > ClutchMark.Widest && clutches.Sum(clutch => ColumnWidth(clutch.Clutch, heading) + Gap) > room) heading--;
        var perChart = Math.Max(1, room / (heading + Gap));
        if (clutches.Sum(clutch => ColumnWidth(clutch.Clutch, heading) + Gap) <= room) perChart = Math.Max(1, clutches.Length);

        for (var first = 0; first == 0 || first < clutches.Length; first += perChart)
        {
            if (first > 0) page.Blank();
            var shown = Enumerable.Range(first, Math.Min(perChart, clutches.Length - first)).ToImmutableArray();
            page.Put(Chart(page, gears, shown, heading, first == 0 && drives, first == 0 && wanted, first == 0));
        }

        Legend(page, gears);
    }

    private static Table Chart(
        Page page, ImmutableArray<GearReport> gears, ImmutableArray<int> clutches, int heading, bool drives, bool wanted, bool verdict)
    {
        var table = Page.Table();
        table.AddColumn(page.Column("gear"));
        foreach (var index in clutches)
            table.AddColumn(page.Column(HeadingLines(gears[0].Clutches[index].Clutch, heading)));
        if (verdict) table.AddColumn(page.Column("verdict", gap: drives ? Gap : 0));
        if (drives) table.AddColumn(page.Column("ratio", right: true));
        if (wanted) table.AddColumn(page.Column("wanted", right: true));
        if (drives) table.AddColumn(page.Column("the driver feels", wrap: true, gap: 0));
        foreach (var gear in gears)
        {
            var style = VerdictStyle(gear.Verdict);
            List<Text> row = [page.Cell(GearCell(gear), Page.Strong)];
            foreach (var index in clutches)
            {
                var mark = ClutchMark.Of(gear, gear.Clutches[index]);
                row.Add(page.Cell(mark.Text, mark.Style));
            }

            if (verdict) row.Add(page.Cell(Words.Of(gear.Verdict), style));
            if (drives) row.Add(page.Cell(Ratio(gear.Drive?.Ratio)));
            if (wanted) row.Add(page.Cell(gear.Drive is { } drive && Misses(drive) ? Ratio(drive.Expected) : ""));
            if (drives) row.Add(page.Cell(gear.Drive?.Feels ?? "", gear.Verdict == Verdict.AsCharted ? Page.Plain : style));
            table.AddRow(row);
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

    /// <summary>A heading on as many lines as it takes to keep within a width: cut at hyphens where that helps.</summary>
    internal static ImmutableArray<string> HeadingLines(string name, int width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var piece in Pieces(name, width))
        {
            if (line.Length > 0 && (line + piece).GetCellWidth() > width)
            {
                lines.Add(line);
                line = "";
            }

            line += piece;
        }

        return [.. lines, line];
    }

    private static IEnumerable<string> Pieces(string name, int width)
    {
        var words = name.Split('-');
        for (var i = 0; i < words.Length; i++)
        {
            var piece = i < words.Length - 1 ? words[i] + "-" : words[i];
            // A word too long for a line is cut into equal lengths: `overd`, `rive` reads better than `overdriv`, `e`.
            var lines = (piece.GetCellWidth() + width - 1) / width;
            var share = (piece.GetCellWidth() + lines - 1) / Math.Max(1, lines);
            while (lines > 1 && piece.GetCellWidth() > share)
            {
                var letters = new StringInfo(piece);
                var take = Enumerable.Range(1, letters.LengthInTextElements)
                    .TakeWhile(count => letters.SubstringByTextElements(0, count).GetCellWidth() <= share).LastOrDefault(1);
                var head = letters.SubstringByTextElements(0, take);
                yield return head;
                piece = piece[head.Length..];
            }

            if (piece.Length > 0) yield return piece;
        }
    }

    private static int ColumnWidth(string clutch, int heading) =>
        Math.Max(ClutchMark.Widest, HeadingLines(clutch, heading).Max(line => line.GetCellWidth()));

    private static string GearCell(GearReport gear) => gear.DependsOnHistory ? gear.Gear + "*" : gear.Gear;

    private static bool Misses(DriveReport drive) => drive.Expected is { } expected
        && (drive.Ratio is not { } ratio || Math.Abs(ratio - expected) > SameRatio * Math.Abs(expected));

    private static void Legend(Page page, ImmutableArray<GearReport> gears)
    {
        var used = gears.SelectMany(gear => gear.Clutches.Select(clutch => ClutchMark.Of(gear, clutch))).ToHashSet();
        var entries = ClutchMark.All.Where(used.Contains).Select(mark => $"{mark.Text} {mark.Meaning}").ToList();
        if (gears.Any(gear => gear.DependsOnHistory)) entries.Add("* depends on the gear it is reached from");
        if (entries.Count == 0) return;
        page.Blank();
        page.Flow(entries, Page.Faint);
    }
}
