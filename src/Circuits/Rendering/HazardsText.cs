using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Studies.Hazards;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>A failure mode and effects table, as a page.</summary>
public static class HazardsText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The table.</param>
    /// <param name="least">Rows less bad than this are counted and not shown.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(HazardReport report, HazardSeverity least, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Assembly, report.NearestMatched);
        GearsText.JudgedBy(page, report.Mode, report.Points);
        page.Item("gears   ", string.Join(", ", report.Gears), indent: 0);
        var fitted = report.AsFitted.IsEmpty ? HazardSeverity.None : report.AsFitted[0].Severity;
        page.Item("fitted  ", 0, null, fitted == HazardSeverity.None
            ? ("nothing is felt in any gear without a fault", Page.Good)
            : ($"{(fitted >= SeverityScale.MustNotBeDriven ? "MUST NOT BE DRIVEN as it is: " : "")}{End(report.AsFitted, report.Gears)}", Page.Bad));
        Scale(page, report);
        var number = 0;
        foreach (var group in report.Rows.Where(row => row.Severity >= least).GroupBy(row => row.Severity))
        {
            var step = SeverityScale.Of(group.Key);
            page.Heading(string.Create(CultureInfo.InvariantCulture, $"Severity {(int)group.Key}, {step.Word}: {step.Meaning}"));
            if (group.Key >= SeverityScale.MustNotBeDriven) page.Line("With any of these the vehicle must not be driven.", Page.Bad, indent: 2);
            foreach (var row in group) Row(page, row, ++number, report.Gears);
        }

        var hidden = report.Rows.Length - number;
        if (hidden > 0)
        {
            page.Blank();
            page.Line($"{Words.Count(hidden, "failure mode")} less bad {(hidden == 1 ? "is" : "are")} not shown: --severity 0 shows all", Page.Faint);
        }

        PageEnding.Assumptions(page, report.Assumptions);
        PageEnding.Cautions(page, CautionsOf(report));
        return page.ToString();
    }

    /// <summary>What whoever reads the table must be told.</summary>
    internal static ImmutableArray<string> CautionsOf(HazardReport report) =>
    [
        .. report.Rows.Any(row => row.MustNotBeDriven) || report.AsFitted.Any(effect => effect.Severity >= SeverityScale.MustNotBeDriven)
            ? new[] { "Stop rule: where a row says so, the vehicle must not be driven to see what happens. It may lock, turn on the driver, roll, or not come back." } : [],
        report.Rows.Any(row => row.ChangesTimed)
            ? "One fault at a time, each complete; two at once may be worse. Changes of gear are timed where a gear alone does not forbid driving."
            : "One fault at a time, each complete, in steady gears; two at once, or a shift between gears, may be worse.",
        Cautions.Measuring,
        Cautions.WhoDecides,
    ];

    /// <summary>End effects in words, what is the same in several gears once: <c>tie-up in 3, 5; no reverse</c>.</summary>
    internal static string End(ImmutableArray<HazardEffect> effects, ImmutableArray<string> gears) => effects.IsEmpty ? "nothing is felt" : string.Join(
        "; ", effects.GroupBy(effect => effect.Severity).SelectMany(same => GearLabels.Group(same.Select(effect => ((string?)effect.Gear, effect.Feel)), gears, FeelWords.ButGear))
            .SelectMany(group => group.Items.Select(feel => $"{FeelWords.Of(feel, gearIsTold: true)}{(feel.IsOnTheWay ? "" : $" in {string.Join(", ", group.Gears.Names)}")}")));

    /// <summary>Local effects in words: <c>direct off in 3, 5</c>.</summary>
    internal static string Local(ImmutableArray<HazardEffect> effects, ImmutableArray<string> gears)
    {
        var text = string.Join("; ", GearLabels.Group(effects.SelectMany(effect => effect.Local.Select(local => ((string?)effect.Gear, local))), gears)
            .SelectMany(group => group.Items.Select(local => $"{Of(local)} in {string.Join(", ", group.Gears.Names)}")));
        return text.Length > 0 ? text : effects.All(effect => !effect.Feel.IsOnTheWay) ? "every clutch as it should" : "clutches on and off as they should, otherwise controlled";
    }

    /// <summary>A local effect in words: <c>direct off</c>.</summary>
    internal static string Of(LocalEffect local) => (local.Charted, local.Strength == ClutchState.Weak) switch
    {
        (true, true) => $"{local.Clutch} weak",
        (true, false) => $"{local.Clutch} off",
        (false, true) => $"{local.Clutch} partly on",
        _ => $"{local.Clutch} on",
    };

    /// <summary>How it is detected, in words.</summary>
    internal static string Detected(HazardRow row, UnitSystem units)
    {
        var felt = row.Effects.IsEmpty ? null : $"felt in {string.Join(", ", row.Effects.Select(effect => effect.Gear))}";
        var gauge = row.Reading is { } reading
            ? $"gauge {reading.Tap} in {reading.Gear}: {Measures.Pressure(reading.Found, units)}, not {Measures.Pressure(reading.Right, units)}" : null;
        return (gauge, felt) switch
        {
            (null, null) => "neither felt nor on a gauge: by inspection alone",
            (null, _) => $"{felt}; no gauge port shows it",
            (_, null) => $"{gauge}; not felt",
            _ => $"{gauge}; {felt}",
        };
    }

    private static void Scale(Page page, HazardReport report)
    {
        page.Blank();
        var table = Page.Table();
        foreach (var heading in new[] { "severity", "modes" }) table.AddColumn(page.Column(heading, right: true));
        table.AddColumn(page.Column([""], "word"));
        table.AddColumn(page.Column("meaning", wrap: true));
        foreach (var step in SeverityScale.Steps)
        {
            table.AddRow(
                page.Cell(((int)step.Severity).ToString(CultureInfo.InvariantCulture)), page.Cell(report.Rows.Count(row => row.Severity == step.Severity).ToString(CultureInfo.InvariantCulture), Page.Strong),
                page.Cell(step.Word), page.Cell(step.Meaning));
        }

        page.Put(table);
    }

    private static void Row(Page page, HazardRow row, int number, ImmutableArray<string> gears)
    {
        page.Blank();
        page.Item(string.Create(CultureInfo.InvariantCulture, $"{number,3}."), 0, Page.Strong, (page.Words(row.Mode), Page.Strong));
        page.Item("item    ", $"{row.Item}: {row.Function}", indent: 5);
        page.Item("local   ", Local(row.Effects, gears), indent: 5);
        page.Item("end     ", End(row.Effects, gears), indent: 5);
        page.Item("detected", Detected(row, page.Options.Units), indent: 5);
        page.Item("code    ", row.Place.File.Length > 0 ? $"{row.Code} ({row.Place})" : row.Code, indent: 5);
    }
}
