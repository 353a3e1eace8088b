using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Rendering.Plots;
using Circuits.Studies.Sensitivity;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary><c>shifts</c>: timed shifts and engagements.</summary>
internal sealed class ShiftsVerb
{
    private const string NearestSet = "matched";

    private readonly ChangeOptions changes;

    private readonly Option<string[]> shift = new("--shift")
    {
        HelpName = "from-to",
        Description = "Only these shifts, in detail: 2-3, N-R. May be repeated; several go with commas.",
    };

    private readonly Option<string[]> with = new("--with")
    {
        HelpName = "matched | set | part=revision",
        Description = "Print it side by side with another assembly: the matched set nearest to it, or the one named.",
    };

    private readonly ShiftOptions conditions = new();
    private readonly SpreadOptions spread = new();

    private readonly PlotOption plot = new("pressure, stroke and torque capacity over time, a sheet a shift,");

    private ShiftsVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new ShiftsVerb(options);
        Completes.FromUnit(verb.shift, options.Files, unit => ShiftPlans.Of(unit).Select(plan => plan.Name));
        Completes.FromUnit(verb.with, options.Files, unit => [NearestSet, .. unit.Matched.Select(set => set.Name)]);
        return new Verb(
            "shifts", "Timed shifts and engagements: when each clutch fills, holds and lets go, and whether that is a flare, a tie-up, late or harsh.",
            [options.Files, .. verb.changes.All, verb.shift, verb.with, .. verb.conditions.All, .. verb.spread.All, verb.plot, options.FindingsFormat, options.Output, options.Units],
            [
                "circuits shifts unit.yaml", "circuits shifts unit.yaml --fit plate=2 --with matched", "circuits shifts unit.yaml --shift 2-3 --hole plate@21=2.0mm --torque 180Nm",
            ],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        var picture = plot.Check(session);
        var asked = changes.Read(session);
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file, asked, picture));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file, ChangeSet asked, string? picture)
    {
        var assembly = ChangeOptions.After(unit, asked);
        var plans = Plans(session, unit, file);
        var at = conditions.Read(session, unit, file);
        var report = ShiftStudy.Run(assembly, Beside(session, unit, file), at, plans) with { Matters = ShiftStudy.Matters(assembly, at, plans) };
        if (SensitivityStudy.Note(assembly) is { } note) report = report with { Assumptions = [.. report.Assumptions, note] };
        if (spread.Read(session) is { } samples)
        {
            var (times, sizes) = SpreadOptions.Ask(session, file, samples, drawn => new ShiftTimes(ShiftStudy.Time(
                ChangeOptions.After(drawn, asked), at, [.. plans.Select(plan => ShiftPlans.Between(drawn, drawn.FindGear(plan.From.Name)!, drawn.FindGear(plan.To.Name)!))]).Shifts));
            report = report with { Spread = ShiftSpread.Of(samples, sizes, times) };
        }

        var sideBySide = Words(session, with).Count > 0;
        PlotOption.Write(session, picture, () => ShiftPlot.Of(report, sideBySide, session.Text.Units));
        return new UnitAnswer(
            () => ShiftsText.Of(report, Words(session, shift).Count > 0, sideBySide, session.Text),
            () => Documents.Of(report),
            report.Findings);
    }

    private static List<string> Words(Session session, Option<string[]> option) => [.. OptionWords.Items(session.Parsed.GetValue(option))];

    private ImmutableArray<ShiftPlan> Plans(Session session, Unit unit, string file)
    {
        var words = Words(session, shift);
        return words.Count == 0 ? ShiftPlans.Of(unit) : [.. words.Distinct().Select(word => ShiftWords.Plan(unit, file, word))];
    }

    private Assembly? Beside(Session session, Unit unit, string file)
    {
        var words = Words(session, with);
        return words.Count == 0 || words is [NearestSet] ? null : FittedParts.Of(unit, file, words);
    }
}
