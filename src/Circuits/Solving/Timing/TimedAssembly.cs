using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;

namespace Circuits.Solving.Timing;

/// <summary>A shift as it was run.</summary>
/// <param name="Start">The steady state that it began from. Where that did not converge, nothing was run.</param>
/// <param name="Outcome">How the run went; null when nothing was run.</param>
/// <param name="Record">What it came past; empty when nothing was run.</param>
/// <param name="Worst">The passage at which the last step was furthest from an answer; empty when nothing was run.</param>
internal sealed record TimedShift(SteadyGear Start, TimedOutcome? Outcome, TimedRecord Record, string Worst = "");

/// <summary>An assembly in time: one network, any number of shifts and conditions. For one thread.</summary>
internal sealed class TimedAssembly
{
    private readonly SteadyAssembly steady;
    private readonly TimedFlow timed;

    public TimedAssembly(Network network)
    {
        steady = new SteadyAssembly(network);
        timed = new TimedFlow(steady.Flow, steady.Balance);
    }

    /// <summary>What was assumed because the file does not say.</summary>
    public IEnumerable<Assumption> Assumptions => steady.Assumptions.Concat(steady.Flow.PistonAssumptions).Append(new Assumption(
        $"assumed {(int)(BulkModulus.Pure / 1e6)} MPa for the stiffness of the oil, and {new Share(OilDefaults.Air)} of free air in it: a file cannot give them", Findings.Place.None));

    /// <summary>Goes from the steady state of one gear to what another gear sets.</summary>
    /// <param name="from">The static answer of the gear that is left.</param>
    /// <param name="to">What the gear that is entered sets; it does so at once, but for the commands that follow a profile.</param>
    /// <param name="conditions">Oil and pump.</param>
    /// <param name="commands">Commands that follow a profile.</param>
    /// <param name="seconds">How long at most.</param>
    /// <param name="tolerance">Error allowed in a step, as a fraction of pressures and strokes.</param>
    /// <param name="enough">Asked after each step whether to end there.</param>
    public TimedShift Run(
        GearSolution from, GearInputs to, FlowConditions conditions, IReadOnlyList<CommandTimes> commands, double seconds,
        double tolerance, Func<TimedRecord, bool> enough)
    {
        var start = steady.Solve(from, conditions);
        var record = new TimedRecord(steady.Flow, steady.Balance, timed.Pistons);
        if (!start.Converged) return new TimedShift(start, null, record);
        steady.Balance.Set(to, conditions);
        var outcome = timed.Run(conditions, commands, seconds, tolerance, record.Add, () => enough(record));
        return new TimedShift(start, outcome, record, start.NameOf(outcome.WorstCell));
    }
}
