using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;
using Circuits.Solving.Timing;
using Circuits.Stacking.Rules;
using Circuits.Studies.Pressures;
using Circuits.Studies.Sensitivity;

namespace Circuits.Studies.Shifts;

/// <summary>Times shifts and engagements of an assembly.</summary>
public static class ShiftStudy
{
    /// <summary>Error allowed in a step of time, as a fraction of pressures and strokes.</summary>
    public const double Tolerance = 1e-3;

    /// <summary>A missing size that moves no time by more than this, ms, does not matter.</summary>
    private const double LeastMs = 1;

    /// <summary>How long a shift is followed at most, s; longer where its profile takes longer.</summary>
    public const double Longest = 4;

    /// <summary>How long a shift is followed after it is over, s.</summary>
    private const double Afterwards = 0.3;

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
        Assembly assembly, Assembly? beside, ShiftConditions conditions, ImmutableArray<ShiftPlan> plans, double tolerance = Tolerance)
    {
        var unit = assembly.Unit;
        var nearest = assembly.NearestOf(unit.Matched, set => Assembly.Of(unit, set));
        if (beside is null && assembly.Matched is null && nearest.Length > 0) beside = Assembly.Of(unit, nearest[0]);
        var here = new Runner(assembly, conditions, tolerance);
        var there = beside is null ? null : new Runner(beside, conditions, tolerance);
        var limits = unit.Thresholds.Shifts;
        ImmutableArray<ShiftPair> pairs = [.. plans.Select(Pair)];
        return new ShiftReport(
            assembly, [.. nearest.Select(set => set.Name)], beside, conditions, pairs,
            [.. here.Assumptions.Select(assumption => assumption.Text).Distinct()],
            [.. here.Findings, .. pairs.Select(FindingOf).OfType<Finding>().Select(finding => finding with { Assembly = assembly.Choice })]);

        ShiftPair Pair(ShiftPlan plan)
        {
            var other = there?.Time(plan);
            return new ShiftPair(ShiftJudge.Feel(here.Time(plan), other, limits), other is null ? null : ShiftJudge.Feel(other, null, limits));
        }
    }

    /// <summary>Times shifts of one assembly, beside nothing.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="plans">The shifts.</param>
    /// <returns>The shifts, and what was assumed.</returns>
    public static (ImmutableArray<TimedShiftReport> Shifts, ImmutableArray<string> Assumptions) Time(
        Assembly assembly, ShiftConditions conditions, ImmutableArray<ShiftPlan> plans)
    {
        var runner = new Runner(assembly, conditions, Tolerance);
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
                new AnswerItem($"{name} touches in {shift.Plan.Name}", clutch?.FillMs), new AnswerItem($"{name} holds in {shift.Plan.Name}", clutch?.HoldsMs),
                new AnswerItem($"{name} lets go in {shift.Plan.Name}", clutch?.LetsGoMs),
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

    /// <summary>One assembly, compiled once for all its shifts.</summary>
    private sealed class Runner
    {
        private readonly Unit unit;
        private readonly Network network;
        private readonly Func<int, GearSolution> gears;
        private readonly TimedAssembly timed;
        private readonly ShiftTrain train;
        private readonly ShiftConditions conditions;
        private readonly double tolerance;

        public Runner(Assembly assembly, ShiftConditions conditions, double tolerance)
        {
            (unit, this.conditions, this.tolerance) = (assembly.Unit, conditions, tolerance);
            network = NetworkBuilder.Build(assembly);
            gears = SolvedAssembly.OneByOne(Plan.Of(network));
            timed = new TimedAssembly(network);
            train = new ShiftTrain(unit);
            Findings = [.. network.Findings];
            Assumptions = [.. network.Assumptions, .. timed.Assumptions];
            OilOfUnit.Temperature(unit, Assumptions);
            ShiftAssumptions.Of(network, train, Assumptions);
        }

        public List<Assumption> Assumptions { get; }

        public List<Finding> Findings { get; }

        public TimedShiftReport Time(ShiftPlan plan)
        {
            var standing = plan.Kind is ShiftKind.Engagement or ShiftKind.Release;
            var speed = standing ? conditions.StandingSpeed : conditions.DrivingSpeed;
            var oil = FlowConditions.Of(unit, conditions.Celsius, speed, Assumptions);
            oil = oil with { Heads = DrumHeads.Of(network, train, plan.From, speed, oil.Density, Assumptions) };
            var torque = TorqueOf(plan, standing);
            var commands = Commands(plan);
            var profile = commands.Select(command => command.Points[^1].Seconds).DefaultIfEmpty(0).Max();
            ShiftJudge? judge = null;
            double? over = null;
            var run = timed.Run(
                gears(unit.Gears.IndexOf(plan.From)), gears(unit.Gears.IndexOf(plan.To)).Inputs, oil, commands, Longest + profile, tolerance,
                record =>
                {
                    judge ??= new ShiftJudge(network, train, plan, torque, record);
                    var now = record.Seconds[^1];
                    over = now < profile || !judge.IsDone() ? null : over ?? now;
                    return now - over >= Afterwards;
                });
            if (run.Outcome is not { Finished: true } outcome || judge is null) return NoAnswer(plan, torque, run);
            return judge.Judge(unit.Thresholds.Shifts, outcome.Lost);
        }

        private static TimedShiftReport NoAnswer(ShiftPlan plan, double torque, TimedShift run) => new(plan, torque, ShiftVerdict.DidNotConverge)
        {
            Reason = run.Outcome is { } outcome
                ? FormattableString.Invariant($"did not converge after {1e3 * outcome.Seconds:0.0} ms")
                : FormattableString.Invariant($"{plan.From.Name} before it did not converge at {run.Start.Worst}; {run.Start.Residual:0.0 %} of the pump's oil is unaccounted for"),
        };

        private double TorqueOf(ShiftPlan plan, bool standing)
        {
            if (conditions.Torque is { } asked) return asked;
            if (plan.Profile?.InputTorque is { } given) return given.NewtonMetres;
            if (standing) return Assumed(FlowDefaults.StandingTorque, "in engagements for which the file gives no torque");

            // A shift that the file times one way is driven with the same torque the other way.
            var timed = unit.Shifts.Where(shift => shift.InputTorque is not null).ToList();
            if (timed.Find(shift => shift.From.Name == plan.To.Name && shift.To.Name == plan.From.Name) is { } back)
                return Assumed(back.InputTorque!.Value.NewtonMetres, "in shifts that the file times the other way only");
            return timed.Count > 0
                ? Assumed(timed.Min(shift => shift.InputTorque!.Value.NewtonMetres), "in shifts for which the file gives no torque: the least that it gives for others")
                : Assumed(FlowDefaults.ShiftTorque, "in shifts for which the file gives no torque");

            double Assumed(double newtonMetres, string where)
            {
                Assumptions.Add(new Assumption(FormattableString.Invariant($"assumed {newtonMetres:0.#} Nm at the input {where}"), plan.To.Place));
                return newtonMetres;
            }
        }

        private List<CommandTimes> Commands(ShiftPlan plan)
        {
            var commands = new List<CommandTimes>();
            foreach (var profile in plan.Profile?.Commands ?? [])
            {
                var name = profile.Solenoid.Name;
                var regulator = network.Regulators.FirstOrDefault(element => element.Solenoid is { } solenoid && (element.Name == name || solenoid.Name == name));
                if (regulator is null)
                {
                    Findings.Add(MissingName.Rule.At(
                        profile.Solenoid.Place, $"shift {plan.Name} commands {name}, which in this assembly is no pressure solenoid: its profile is not followed"));
                    continue;
                }

                // One that has failed follows nothing.
                if (regulator.Solenoid!.Fault is not null) continue;
                commands.Add(new CommandTimes(
                    network.Regulators.IndexOf(regulator), [.. profile.Points.Select(point => (point.Time.Milliseconds / 1e3, point.Pressure.Kilopascals * 1e3))]));
            }

            return commands;
        }
    }
}
