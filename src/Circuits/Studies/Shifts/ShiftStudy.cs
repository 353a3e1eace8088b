using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Solving.Oil;
using Circuits.Studies.Pressures;
using Circuits.Studies.Sensitivity;

namespace Circuits.Studies.Shifts;

/// <summary>Times shifts and engagements of an assembly.</summary>
public static class ShiftStudy
{
    /// <summary>How long a shift is followed at most, s; longer where its profile takes longer.</summary>
    public const double Longest = ShiftTimer.Longest;

    /// <summary>A missing size that moves no time by more than this, ms, does not matter.</summary>
    private const double LeastMs = 1;

    /// <summary>What a file's conditions come to: its working temperature; its lowest pump speed while standing, its highest else.</summary>
    /// <param name="unit">The unit.</param>
    public static ShiftConditions ConditionsOf(Unit unit)
    {
        var speeds = PressureStudy.SpeedsOf(unit).Select(speed => speed.Value).ToList();
        return new ShiftConditions(OilOfUnit.Temperature(unit, []), speeds.Min(), speeds.Max(), null);
    }

    /// <summary>Times shifts.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="beside">An assembly to hold it against, or null for the matched set nearest to it.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="plans">The shifts.</param>
    /// <param name="tolerance">Error allowed in a step, as a fraction of pressures and strokes.</param>
    public static ShiftReport Run(
        Assembly assembly, Assembly? beside, ShiftConditions conditions, ImmutableArray<ShiftPlan> plans, double tolerance = ShiftTimer.Tolerance)
    {
        var unit = assembly.Unit;
        var nearest = assembly.NearestOf(unit.Matched, set => Assembly.Of(unit, set));
        if (beside is null && assembly.Matched is null && nearest.Length > 0) beside = Assembly.Of(unit, nearest[0]);
        var here = new ShiftTimer(assembly, conditions, tolerance);
        var there = beside is null ? null : new ShiftTimer(beside, conditions, tolerance);
        var limits = unit.Thresholds.Shifts;
        var judge = new UnitJudge(unit);
        ImmutableArray<ShiftPair> pairs = [.. plans.Select(Pair)];
        return new ShiftReport(
            assembly, [.. nearest.Select(set => set.Name)], beside, conditions, pairs,
            [.. here.Assumptions.Select(assumption => assumption.Text).Distinct()],
            [.. here.Findings, .. pairs.Select(FindingOf).OfType<Finding>().Select(finding => finding with { Assembly = assembly.Choice })]);

        ShiftPair Pair(ShiftPlan plan)
        {
            var other = there?.Time(plan);
            var change = ShiftJudge.Feel(here.Time(plan), other, limits);
            return new ShiftPair(ChangeDoubt.Of(change, other, assembly, conditions, gear => judge.IsAsCharted(assembly, [unit.Gears.IndexOf(gear)])), other is null ? null : ShiftJudge.Feel(other, null, limits));
        }
    }

    /// <summary>Times shifts of one assembly, beside nothing.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="plans">The shifts.</param>
    /// <returns>The shifts, and what was assumed.</returns>
    public static (ImmutableArray<TimedShiftReport> Shifts, ImmutableArray<Phrase> Assumptions) Time(
        Assembly assembly, ShiftConditions conditions, ImmutableArray<ShiftPlan> plans)
    {
        var runner = new ShiftTimer(assembly, conditions, ShiftTimer.Tolerance);
        return ([.. plans.Select(runner.Time)], [.. runner.Assumptions.Select(assumption => assumption.Text).Distinct()]);
    }

    /// <summary>Which missing sizes matter to the times of shifts.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="plans">The shifts.</param>
    public static ImmutableArray<SizeEffect> Matters(Assembly assembly, ShiftConditions conditions, ImmutableArray<ShiftPlan> plans) => SensitivityStudy.Rank(
        assembly, varied => [.. Time(varied, conditions, plans).Shifts.SelectMany(Items)], LeastMs);

    private static IEnumerable<AnswerItem> Items(TimedShiftReport shift)
    {
        var roles = shift.Plan.From.Apply.Concat(shift.Plan.To.Apply).Select(use => use.Name).Distinct();
        return roles.SelectMany(name =>
        {
            var clutch = shift.Clutches.FirstOrDefault(each => each.Clutch == name);
            return new[]
            {
                new AnswerItem(Phrase.Of($"{name} touches in {shift.Plan.Name}"), clutch?.FillMs), new AnswerItem(Phrase.Of($"{name} holds in {shift.Plan.Name}"), clutch?.HoldsMs),
                new AnswerItem(Phrase.Of($"{name} lets go in {shift.Plan.Name}"), clutch?.LetsGoMs),
            };
        });
    }

    /// <summary>What is wrong with a shift is an error, unless the matched set that it is held against, known to be good, does no better.</summary>
    private static Finding? FindingOf(ShiftPair pair)
    {
        var (plan, here) = (pair.Here.Plan, pair.Here);
        if (ShiftRules.Of(here.Verdict) is not { } rule) return null;
        var finding = rule.At(plan.Profile?.Place ?? plan.To.Place, $"{plan.Name}: {here.Reason}") with { Gear = plan.To.Name };
        var better = pair.Beside is { } beside ? beside.Verdict < here.Verdict : here.Verdict >= ShiftVerdict.NeverHolds;
        return better || finding.Severity != Severity.Error ? finding : finding with { Severity = Severity.Warning };
    }
}
