using System.Collections.Immutable;
using Circuits.Judging.Changes;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>
/// Judges settled flow: what each clutch has against what the nearest matched set gives it at the same condition and against the torque that it has
/// to carry, and what flows where the unit needs it.
/// </summary>
/// <param name="unit">The unit.</param>
/// <param name="train">What its gear train asks of clutches.</param>
/// <param name="needs">What it needs besides clutches.</param>
internal sealed class ConditionJudge(Unit unit, ShiftTrain train, ImmutableArray<UnitNeed> needs)
{
    /// <summary>Pressures below this, kPa, are nothing.</summary>
    private const double Nothing = 0.01;

    /// <summary>Capacities that reach a need but for rounding do reach it.</summary>
    private const double Rounding = 1e-9;

    /// <summary>What the unit needs besides clutches.</summary>
    public ImmutableArray<UnitNeed> Needs => needs;

    /// <summary>Judges a gear at a condition.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="point">The condition's number.</param>
    /// <param name="here">The assembly.</param>
    /// <param name="matched">The nearest matched set, or null; the assembly itself where it is one.</param>
    public ConditionReport Judge(int gear, int point, FlowAnswers here, FlowAnswers? matched)
    {
        var report = JudgeAlone(gear, point, here, matched);
        if (matched is null || matched == here || report.Verdict == Verdict.AsCharted) return report with { SharedByMatched = matched == here && report.Verdict != Verdict.AsCharted };
        return report with { SharedByMatched = JudgeAlone(gear, point, matched, matched).Verdict >= report.Verdict };
    }

    private ConditionReport JudgeAlone(int gear, int point, FlowAnswers here, FlowAnswers? matched)
    {
        var at = here.Points[point];
        var settled = here.In(gear, point);
        if (!settled.Converged) return new ConditionReport(at, Verdict.DidNotConverge, 0, [], []) { DidNotConvergeAt = settled.Worst };
        var there = matched?.In(gear, point) is { Converged: true } found ? new GearAtCondition(found, matched.Flow) : null;
        var clutches = settled.Network.Clutches.Select(clutch => Clutch(clutch, gear, point, here, matched)).ToImmutableArray();
        var reports = NeedJudge.Judge(needs, unit.Gears[gear].Name, new GearAtCondition(settled, here.Flow), there);
        var verdict = Verdict.AsCharted;
        foreach (var clutch in clutches) verdict = Worse(verdict, clutch.Verdict);
        foreach (var need in reports) verdict = Worse(verdict, need.Verdict);
        return new ConditionReport(at, verdict, settled.PressureAt(settled.Network.Pump) / 1e3, clutches, reports)
        {
            MatchedLineKilopascals = there?.Kilopascals(there.Settled.Network.Pump),
        };
    }

    private static Verdict Worse(Verdict one, Verdict other) => one > other ? one : other;

    private ClutchAtCondition Clutch(ClutchElement element, int gear, int point, FlowAnswers here, FlowAnswers? matched)
    {
        var state = unit.Gears[gear];
        var settled = here.In(gear, point);
        var name = element.Clutch.Name;
        var charted = Charts.Applies(state, name);
        var pressure = NetPressure(element, settled);
        var reference = matched is null ? null : ReferencePressure(name, gear, point, matched);
        var line = settled.PressureAt(settled.Network.Pump) / 1e3;
        var full = Math.Max(reference ?? line, unit.Thresholds.Floor * line);
        var strength = pressure < Nothing || full < Nothing ? ClutchState.Released
            : pressure >= unit.Thresholds.Applied * full ? ClutchState.Applied
            : pressure >= unit.Thresholds.Weak * full ? ClutchState.Weak
            : ClutchState.Released;
        var (clamp, capacity) = Capacity(element, settled, here, gear, point);
        var need = charted ? train.Need(state, name) * InputTorque.In(unit, gear, here.Points[point]) : 0;
        if (charted && element.Chamber >= 0)
        {
            // Plates that do not touch carry nothing, whatever the pressure; what carries too little slips.
            if (clamp <= 0) strength = ClutchState.Released;
            else if (capacity < need * (1 - Rounding) && strength == ClutchState.Applied) strength = ClutchState.Weak;
        }

        return new ClutchAtCondition(name, charted, pressure, reference, clamp, capacity, need, strength, ClutchJudge.VerdictOf(charted, strength));
    }

    /// <summary>Force on the plates, N, and the torque that they can carry, N m.</summary>
    private (double Clamp, double Capacity) Capacity(ClutchElement element, SteadyGear settled, FlowAnswers here, int gear, int point)
    {
        var number = settled.Network.Clutches.IndexOf(element);
        foreach (var piston in here.Flow.Pistons)
        {
            if (piston.Clutch != number) continue;
            var heads = here.HeadsIn(gear, point, train);
            var clamp = piston.Clamp(settled.Pressures, heads.IsEmpty ? 0 : heads[number]);
            var sizes = new ClutchSizes(element.Clutch);
            return (clamp, ClutchTorque.Capacity(clamp, sizes.Friction, sizes.Plates, sizes.Radius / 1e3));
        }

        return (0, 0);
    }

    /// <summary>Apply pressure less what release oil takes off, kPa, at least 0.</summary>
    private static double NetPressure(ClutchElement clutch, SteadyGear gear) =>
        Math.Max(0, gear.PressureAt(clutch.Chamber) - (clutch.ReleaseShare * gear.PressureAt(clutch.ReleaseChamber))) / 1e3;

    /// <summary>
    /// Pressure at which a clutch holds in a gear: what the matched set gives it there when charted, else the least that it gives it in a gear where it
    /// is charted; kPa. Null where the chart applies it nowhere, or the matched set comes to no answer.
    /// </summary>
    private double? ReferencePressure(string clutch, int gear, int point, FlowAnswers matched)
    {
        var element = matched.Network.Clutches.First(candidate => candidate.Clutch.Name == clutch);
        if (Charts.Applies(unit.Gears[gear], clutch)) return Pressure(gear);
        double? least = null;
        for (var other = 0; other < unit.Gears.Length; other++)
        {
            if (Charts.Applies(unit.Gears[other], clutch) && Pressure(other) is { } pressure && !(pressure >= least)) least = pressure;
        }

        return least;

        double? Pressure(int at) => matched.In(at, point) is { Converged: true } settled ? NetPressure(element, settled) : null;
    }
}
