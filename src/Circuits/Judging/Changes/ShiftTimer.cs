using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;
using Circuits.Solving.Timing;
using Circuits.Stacking.Rules;

namespace Circuits.Judging.Changes;

/// <summary>Times changes of gear of one assembly, which is compiled once for all of them. Not for several threads at once.</summary>
internal sealed class ShiftTimer
{
    /// <summary>Error allowed in a step of time, as a fraction of pressures and strokes.</summary>
    public const double Tolerance = 1e-3;

    /// <summary>How long a shift is followed at most, s; longer where its profile takes longer.</summary>
    public const double Longest = 4;

    /// <summary>How long a shift is followed after it is over, s.</summary>
    private const double Afterwards = 0.3;

    private readonly Unit unit;
    private readonly Network network;
    private readonly Func<int, GearSolution> gears;
    private readonly TimedAssembly timed;
    private readonly ShiftTrain train;
    private readonly ShiftConditions conditions;
    private readonly double tolerance;

    /// <summary>An assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="tolerance">Error allowed in a step of time.</param>
    public ShiftTimer(Assembly assembly, ShiftConditions conditions, double tolerance)
        : this(NetworkBuilder.Build(assembly), null, conditions, tolerance)
    {
    }

    /// <summary>A network, with its gears where those are solved already.</summary>
    /// <param name="network">The network.</param>
    /// <param name="solved">A gear's static answer by its number; null to solve them.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="tolerance">Error allowed in a step of time.</param>
    public ShiftTimer(Network network, Func<int, GearSolution>? solved, ShiftConditions conditions, double tolerance)
    {
        (unit, this.network, this.conditions, this.tolerance) = (network.Assembly.Unit, network, conditions, tolerance);
        gears = solved ?? SolvedAssembly.OneByOne(Solving.Plan.Of(network));
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
            ? Phrase.Of($"did not converge at {run.Worst} after {new Duration(1e3 * outcome.Seconds)}{(outcome.Steps + outcome.Rejected >= TimedFlow.MostSteps ? Phrase.Of($": {TimedFlow.MostSteps} steps were not enough") : null)}")
            : Phrase.Of($"{plan.From.Name} before it did not converge at {run.Start.Worst}; {new Share(run.Start.Residual)} of the pump's oil is unaccounted for"),
    };

    private double TorqueOf(ShiftPlan plan, bool standing)
    {
        if (conditions.Torque is { } asked) return asked;
        if (plan.Profile?.InputTorque is { } given) return given.NewtonMetres;
        if (standing) return Assumed(FlowDefaults.StandingTorque, Phrase.Of($"in engagements for which the file gives no torque"));

        // A shift that the file times one way is driven with the same torque the other way.
        var timed = unit.Shifts.Where(shift => shift.InputTorque is not null).ToList();
        if (timed.Find(shift => shift.From.Name == plan.To.Name && shift.To.Name == plan.From.Name) is { } back)
            return Assumed(back.InputTorque!.Value.NewtonMetres, Phrase.Of($"in shifts that the file times the other way only"));
        return timed.Count > 0
            ? Assumed(timed.Min(shift => shift.InputTorque!.Value.NewtonMetres), Phrase.Of($"in shifts for which the file gives no torque: the least that it gives for others"))
            : Assumed(FlowDefaults.ShiftTorque, Phrase.Of($"in shifts for which the file gives no torque"));

        double Assumed(double newtonMetres, Phrase where)
        {
            Assumptions.Add(new Assumption($"assumed {new Torque(newtonMetres)} at the input {where}", plan.To.Place));
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
