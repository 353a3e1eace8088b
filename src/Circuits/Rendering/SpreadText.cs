using System.Globalization;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Studies.Pressures;
using Circuits.Studies.Shifts;
using Circuits.Studies.Sizing;
using Circuits.Studies.Spread;

namespace Circuits.Rendering;

/// <summary>How far results spread, as part of a page.</summary>
internal static class SpreadText
{
    /// <summary>The gauge table, each pressure as a range.</summary>
    public static void Pressures(Page page, PressureReport report, PressureSpread spread)
    {
        Heading(page, spread.Request, spread.Sizes, Measures.PressureUnit(page.Options.Units));
        if (spread.Sizes == 0) return;
        foreach (var point in spread.Points)
        {
            page.Blank();
            page.Line(PressuresText.Name(point.At, page.Options.Units), Page.Strong);
            var table = Page.Table();
            table.AddColumn(page.Column("gear"));
            table.AddColumn(page.Column("at pump", right: true));
            foreach (var tap in report.Taps) table.AddColumn(page.Column(tap.Name, right: true));
            foreach (var gear in point.Gears)
                table.AddRow([page.Cell(gear.Gear, Page.Strong), page.Cell(Pressure(page, gear.Line)), .. gear.Taps.Select(tap => page.Cell(Pressure(page, tap)))]);
            page.Put(table);
            foreach (var gear in point.Gears.Where(gear => gear.Converged < 100))
                page.Line(string.Create(CultureInfo.InvariantCulture, $"{gear.Gear}: no answer for {100 - gear.Converged:0.#} % of them"), Page.Bad);
        }
    }

    /// <summary>Each shift's times as ranges, and how often it comes to which verdict.</summary>
    public static void Shifts(Page page, ShiftSpread spread)
    {
        Heading(page, spread.Request, spread.Sizes, "ms");
        if (spread.Sizes == 0) return;
        var table = Page.Table();
        table.AddColumn(page.Column("shift"));
        table.AddColumn(page.Column("touches", wrap: true));
        foreach (var heading in new[] { "lets go", "holds", "flare", "tie-up" }) table.AddColumn(page.Column(heading, right: true));
        table.AddColumn(page.Column("verdict", wrap: true, gap: 0));
        foreach (var shift in spread.Shifts)
        {
            table.AddRow(
                page.Cell(shift.Plan.Name, Page.Strong),
                page.Cell(shift.Clutches.IsEmpty ? "-" : string.Join(", ", shift.Clutches.Select(clutch => $"{clutch.Key} {Ms(clutch.Value)}"))),
                page.Cell(shift.LetsGo is null ? "-" : Ms(shift.LetsGo)), page.Cell(Ms(shift.Holds)), page.Cell(Ms(shift.Flare, zero: "-")), page.Cell(Ms(shift.TieUp, zero: "-")),
                page.Cell(
                    string.Join(", ", shift.Verdicts.Select(share => string.Create(CultureInfo.InvariantCulture, $"{VerdictText.Of(share.Key)} {share.Value:0.#} %"))),
                    shift.Verdicts is [{ Key: ShiftVerdict.Good }] ? Page.Good : Page.Doubtful));
        }

        page.Put(table);
    }

    /// <summary>The times of a hole and of the drills beside it, each as a range.</summary>
    public static void Sizes(Page page, SizeSpread spread)
    {
        Heading(page, spread.Request, spread.Sizes, "ms");
        if (spread.Sizes == 0) return;
        foreach (var (hole, range) in spread.Holes)
        {
            var name = Measures.Length(hole.Millimetres, page.Options.Units);
            page.Item(hole.Drill is { } drill ? string.Create(CultureInfo.InvariantCulture, $"#{drill}, {name}:") : $"{name}:", Ms(range));
        }
    }

    private static void Heading(Page page, SpreadRequest request, int sizes, string unit)
    {
        page.Heading(string.Create(CultureInfo.InvariantCulture, $"Where nine tenths of {request.Count} units lie, {unit} (seed {request.Seed})"));
        page.Line(
            sizes == 0 ? "No size of the file carries a tolerance (2.10 +- 0.05 mm), so nothing spreads."
                : string.Create(CultureInfo.InvariantCulture, $"{sizes} {(sizes == 1 ? "size carries" : "sizes carry")} a tolerance; each value within it is as likely as any other."), Page.Faint);
    }

    private static string Pressure(Page page, SpreadRange? range) => range is not { } known ? "none"
        : Between(Measures.PressureNumber(known.Low, page.Options.Units), Measures.PressureNumber(known.High, page.Options.Units));

    private static string Ms(SpreadRange? range, string zero = "0")
    {
        if (range is not { } known) return "never";
        var text = Between(Whole(known.Low), Whole(known.High));
        if (text == "0") text = zero;
        return known.Missing > 0 ? string.Create(CultureInfo.InvariantCulture, $"{text} (never: {known.Missing:0.#} %)") : text;
    }

    private static string Whole(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture);

    private static string Between(string low, string high) => low == high ? low : low.StartsWith('-') || high.StartsWith('-') ? $"{low} to {high}" : $"{low}-{high}";
}
