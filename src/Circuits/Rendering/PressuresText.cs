using System.Collections.Immutable;
using System.Globalization;
using Circuits.Quantities;
using Circuits.Studies.Pressures;

namespace Circuits.Rendering;

/// <summary>Steady pressures as a page: the gauge table that a technician compares with, and where the pump's oil goes.</summary>
public static class PressuresText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="detailed">Whether to list every passage and every flow as well.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(PressureReport report, bool detailed, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Assembly, report.NearestMatched);
        page.Blank();
        page.Line(
            $"Gauge ports in {Measures.PressureUnit(options.Units)}. In L/min: what the pump gives, and what the line regulator spills since "
            + "nothing before it needs it; none means that line pressure is not held.", Page.Faint);
        foreach (var point in report.Points)
        {
            page.Heading(Name(point.At, options.Units));
            Gauges(page, report, point);
            if (!detailed) continue;
            foreach (var gear in point.Gears.Where(gear => gear.Converged)) Detail(page, gear);
        }

        if (report.Spread is { } spread) SpreadText.Pressures(page, report, spread);
        PageEnding.Findings(page, report.Findings, report.Assembly.Unit);
        PageEnding.Assumptions(page, report.Assumptions);
        MattersText.Write(page, report.Matters, Dimension.Pressure);
        PageEnding.Cautions(page, [Cautions.Measuring, Cautions.WhoDecides]);
        return page.ToString();
    }

    internal static string Name(OperatingPoint at, UnitSystem units) => string.Create(
        CultureInfo.InvariantCulture, $"{(at.Name.Length > 0 ? at.Name + ": " : "")}oil at {Measures.Temperature(at.Celsius, units)}, pump at {at.RevolutionsPerMinute:0} rpm");

    private static void Gauges(Page page, PressureReport report, PressurePoint point)
    {
        var table = Page.Table();
        table.AddColumn(page.Column("gear"));
        foreach (var heading in new[] { "pump", "spilled", "at pump" }) table.AddColumn(page.Column(heading, right: true));
        foreach (var tap in report.Taps) table.AddColumn(page.Column(tap.Name, right: true));
        foreach (var gear in point.Gears)
        {
            table.AddRow(
            [
                page.Cell(gear.Gear, Page.Strong), .. Head(page, gear),
                .. report.Taps.Select((_, i) => page.Cell(gear.Converged ? Kilopascals(page, gear.Taps[i]) : "-")),
            ]);
        }

        page.Put(table);
        foreach (var gear in point.Gears.Where(gear => !gear.Converged))
            page.Line($"{gear.Gear}: no answer; did not converge at {gear.Worst}", Page.Bad);
    }

    private static IEnumerable<GridCell> Head(Page page, PressureGear gear) =>
    [
        page.Cell(gear.Converged ? Litres(gear.PumpLitresPerMinute) : "-"),
        page.Cell(gear.Converged ? Litres(gear.SpilledLitresPerMinute) : "-", gear is { Converged: true, SpilledLitresPerMinute: < 0.05 } ? Page.Doubtful : Page.Plain),
        page.Cell(gear.Converged ? Kilopascals(page, gear.LineKilopascals) : "-"),
    ];

    private static void Detail(Page page, PressureGear gear)
    {
        page.Heading($"Gear {gear.Gear}: where the pump's oil returns to sump");
        Rates(page, gear.Budget, gear.PumpLitresPerMinute);
        page.Heading($"Gear {gear.Gear}: what flows");
        Rates(page, gear.Flows, null);
        page.Heading($"Gear {gear.Gear}: pressure in every passage, {Measures.PressureUnit(page.Options.Units)}");
        page.Flow(gear.Passages.Select(passage => $"{passage.Passage} {Kilopascals(page, passage.Kilopascals)}"), Page.Plain);
    }

    private static void Rates(Page page, ImmutableArray<SteadyRate> rates, double? of)
    {
        if (rates.IsEmpty) page.Line("nothing", Page.Faint, indent: 2);
        var table = Page.Table();
        table.AddColumn(page.Column("L/min", right: true));
        if (of is not null) table.AddColumn(page.Column("%", right: true));
        table.AddColumn(page.Column("through", wrap: true));
        table.AddColumn(page.Column("from", wrap: true));
        if (of is null) table.AddColumn(page.Column("to", wrap: true, gap: 0));
        foreach (var rate in rates)
        {
            List<GridCell> row = [page.Cell(rate.LitresPerMinute.ToString("0.00", CultureInfo.InvariantCulture))];
            if (of is > 0 and { } whole) row.Add(page.Cell((100 * rate.LitresPerMinute / whole).ToString("0", CultureInfo.InvariantCulture)));
            else if (of is not null) row.Add(page.Cell("-"));
            row.Add(page.Cell(rate.Element));
            row.Add(page.Cell(rate.From));
            if (of is null) row.Add(page.Cell(rate.To));
            table.AddRow([.. row]);
        }

        if (!rates.IsEmpty) page.Put(table, indent: 2);
    }

    private static string Kilopascals(Page page, double? value) => value is { } known ? Measures.PressureNumber(known, page.Options.Units) : "none";

    private static string Litres(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
