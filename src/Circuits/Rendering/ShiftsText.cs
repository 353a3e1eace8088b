using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Quantities;
using Circuits.Studies.Shifts;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>Timed shifts as a page.</summary>
public static class ShiftsText
{
    /// <summary>About so many lines show a shift over time.</summary>
    private const int Rows = 16;

    private static readonly ImmutableArray<int> Round = [1, 2, 5, 10];

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="detailed">Whether to show every clutch, and the shift over time.</param>
    /// <param name="sideBySide">Whether to show the assembly that it is held against as well.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(ShiftReport report, bool detailed, bool sideBySide, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Assembly, report.NearestMatched);
        page.Item("oil     ", FormattableString.Invariant(
            $"{Measures.Temperature(report.Conditions.Celsius, options.Units)}; pump at {report.Conditions.StandingSpeed:0} rpm while a gear is engaged, {report.Conditions.DrivingSpeed:0} rpm in shifts"), indent: 0);
        var other = sideBySide && report.Beside is { } beside ? beside.Matched ?? "beside" : null;
        if (sideBySide) page.Item("beside  ", report.Beside is { } shown ? Name(shown) : report.Assembly.Matched is null ? "nothing: the file declares no matched set" : "nothing: this is a matched set", indent: 0);
        page.Blank();
        page.Line(
            "Times in ms since the shift began: when a clutch that comes on touches, when one that goes off can no longer carry its torque, from when on the gear "
            + "holds; how long too little capacity holds the torque (flare), and how long clutches work against each other (tie-up).", Page.Faint);
        page.Blank();
        if (report.Shifts.IsEmpty) page.Line("The gears of this file make no shift: none that applies a clutch follows one that is left. Name one with --shift.");
        else Overview(page, report, other);
        if (detailed) foreach (var pair in report.Shifts) Detail(page, pair, other);
        if (report.Spread is { } spread) SpreadText.Shifts(page, spread);
        PageEnding.Findings(page, report.Findings, report.Assembly.Unit);
        PageEnding.Assumptions(page, report.Assumptions);
        MattersText.Write(page, report.Matters, Dimension.Duration);
        PageEnding.Cautions(page, Cautions.For(report));
        return page.ToString();
    }

    private static string Name(Model.Assembly assembly) =>
        assembly.Matched is { } set ? $"matched set {set}" : string.Join(", ", assembly.Choice.Select(choice => $"{choice.Key}={choice.Value}"));

    private static void Overview(Page page, ShiftReport report, string? other)
    {
        var table = Page.Table();
        table.AddColumn(page.Column("shift"));
        table.AddColumn(page.Column("touches", wrap: true));
        table.AddColumn(page.Column("lets go", wrap: true));
        foreach (var heading in new[] { "holds", "flare", "tie-up" }) table.AddColumn(page.Column(heading, right: true));
        table.AddColumn(page.Column("verdict", gap: 0));
        foreach (var pair in report.Shifts)
        {
            Row(table, page, pair.Here.Plan.Name, pair.Here);
            if (other is not null && pair.Beside is { } beside) Row(table, page, $"  {other}", beside, $"{pair.Here.Plan.Name}, {other}");
        }

        page.Put(table);
    }

    private static void Row(Grid table, Page page, string name, TimedShiftReport shift, string? spoken = null) => table.AddRow(
        page.Cell(name, Page.Strong, spoken),
        page.Cell(Moments(shift, ClutchRole.OnComing, clutch => clutch.FillMs)),
        page.Cell(Moments(shift, ClutchRole.OffGoing, clutch => clutch.NeedBefore > 0 ? clutch.LetsGoMs : clutch.ReleasedMs)),
        page.Cell(Ms(shift.HoldsMs)),
        page.Cell(shift.FlareMs > 0.5 ? Ms(shift.FlareMs) : "-"),
        page.Cell(shift.TieUpMs > 0.5 ? Ms(shift.TieUpMs) : "-"),
        page.Cell(VerdictText.Of(shift.Verdict), Style(shift.Verdict)));

    private static string Moments(TimedShiftReport shift, ClutchRole role, Func<ShiftClutch, double?> moment)
    {
        var clutches = shift.Clutches.Where(clutch => clutch.Role == role).Select(clutch => $"{clutch.Clutch} {(moment(clutch) is { } ms ? Ms(ms) : "never")}").ToList();
        return clutches.Count == 0 ? "-" : string.Join(", ", clutches);
    }

    private static void Detail(Page page, ShiftPair pair, string? other)
    {
        One(page, pair.Here, "");
        if (other is not null && pair.Beside is { } beside) One(page, beside, $" ({other})");
    }

    private static void One(Page page, TimedShiftReport shift, string note)
    {
        page.Heading($"{shift.Plan.Name}{note}: {VerdictText.Of(shift.Verdict)}{(shift.Reason.IsEmpty ? "" : $", {page.Words(shift.Reason)}")}");
        if (shift.Verdict == ShiftVerdict.DidNotConverge) return;
        page.Line($"{Measures.Torque(shift.Torque, page.Options.Units)} at the input; {(shift.Plan.Profile?.Commands.Length > 0 ? "commands follow the file's profile" : "commands change at once")}", Page.Faint, indent: 2);
        Clutches(page, shift);
        page.Blank();
        Course(page, shift);
    }

    private static void Clutches(Page page, TimedShiftReport shift)
    {
        var table = Page.Table();
        var (units, torque) = (page.Options.Units, Measures.UnitOf(Dimension.Torque, page.Options.Units));
        table.AddColumn(page.Column("clutch"));
        table.AddColumn(page.Column("is"));
        table.AddColumn(page.Column(["carries", torque], $"carries, {torque}", right: true));
        foreach (var heading in new[] { "touches", "holds", "lets go", "is off", "empty" }) table.AddColumn(page.Column([heading, "ms"], $"{heading}, ms", right: true));
        table.AddColumn(page.Column(["can", "carry", torque], $"can carry, {torque}", right: true, gap: 0));
        foreach (var clutch in shift.Clutches)
        {
            table.AddRow(
                page.Cell(clutch.Clutch), page.Cell(Words(clutch.Role)),
                page.Cell($"{Need(clutch.NeedBefore)} > {Need(clutch.NeedAfter)}", spoken: $"{Need(clutch.NeedBefore)}, then {Need(clutch.NeedAfter)}"),
                page.Cell(Ms(clutch.FillMs)), page.Cell(Ms(clutch.HoldsMs)), page.Cell(Ms(clutch.LetsGoMs)), page.Cell(Ms(clutch.ReleasedMs)), page.Cell(Ms(clutch.EmptyMs)),
                page.Cell(Need(clutch.CapacityAfter)));
        }

        page.Put(table, indent: 2);

        string Need(double newtonMetres) => Measures.TorqueNumber(newtonMetres, units);
    }

    private static string Words(ClutchRole role) => role switch
    {
        ClutchRole.OnComing => "on-coming",
        ClutchRole.OffGoing => "off-going",
        ClutchRole.Holding => "holding",
        _ => "not charted",
    };

    private static void Course(Page page, TimedShiftReport shift)
    {
        var table = Page.Table();
        var (pressure, torque) = (Measures.PressureUnit(page.Options.Units), Measures.UnitOf(Dimension.Torque, page.Options.Units));
        table.AddColumn(page.Column("ms", right: true));
        table.AddColumn(page.Column(["line", pressure], $"line, {pressure}", right: true));
        var clutches = shift.Clutches.Select((clutch, i) => (clutch, i)).Where(pair => pair.clutch.Role != ClutchRole.Holding).ToList();
        foreach (var (clutch, _) in clutches)
        {
            table.AddColumn(page.Column([clutch.Clutch, pressure], $"{clutch.Clutch}, {pressure}", right: true, gap: 1));
            table.AddColumn(page.Column(["", torque], $"{clutch.Clutch}, {torque}", right: true));
        }

        foreach (var sample in ShiftSamples.Every(shift, Step(shift.EndMs)))
        {
            List<GridCell> row = [page.Cell(Ms(sample.Ms)), page.Cell(Measures.PressureNumber(sample.LineKilopascals, page.Options.Units))];
            foreach (var (_, i) in clutches)
            {
                row.Add(page.Cell(Measures.PressureNumber(sample.Clutches[i].Kilopascals, page.Options.Units)));
                row.Add(page.Cell(Measures.TorqueNumber(sample.Clutches[i].Capacity, page.Options.Units)));
            }

            table.AddRow([.. row]);
        }

        page.Put(table, indent: 2);
    }

    /// <summary>A round step, ms, that makes about as many lines as wanted.</summary>
    private static double Step(double end)
    {
        var rough = Math.Max(end / Rows, 1e-3);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return Round.Select(factor => factor * power).First(step => step >= rough * 0.999);
    }

    internal static Style Style(ShiftVerdict verdict) => verdict switch
    {
        ShiftVerdict.Good => Page.Good,
        ShiftVerdict.NotDecided or ShiftVerdict.Harsh or ShiftVerdict.Delayed => Page.Doubtful,
        _ => Page.Bad,
    };

    private static string Ms(double? value) => value is { } ms ? ms.ToString("0", CultureInfo.InvariantCulture) : "-";
}
