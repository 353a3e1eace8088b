using System.Collections.Immutable;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>Steady pressures and flows of one gear. Immutable.</summary>
public sealed class SteadyGear
{
    private readonly FlowNetwork flow;
    private readonly double[] pressures;
    private readonly double[] flows;
    private readonly double[] travels;

    internal SteadyGear(Network network, FlowNetwork flow, FlowBalance balance, SteadyOutcome outcome)
    {
        Network = network;
        this.flow = flow;
        pressures = [.. balance.Pressure];
        flows = [.. balance.Flow];
        travels = [.. Enumerable.Range(0, flow.Spools.Length).Select(balance.TravelOf)];
        Pumped = balance.Pumped;
        Converged = outcome.Converged;
        Residual = outcome.Residual;
        Worst = flow.Names[outcome.WorstCell];
        Steps = outcome.Steps;
        Elements = [.. flow.Elements.Select((element, i) => new ElementFlow(element, flows[i]))];
    }

    /// <summary>Whether every balance is met to a billionth of what the pump gives. When not, no number here is an answer.</summary>
    public bool Converged { get; }

    /// <summary>The largest imbalance, as a fraction of what the pump gives.</summary>
    public double Residual { get; }

    /// <summary>The passage that has it.</summary>
    public string Worst { get; }

    /// <summary>How many linear systems were solved.</summary>
    public int Steps { get; }

    /// <summary>What the pump gives, m3/s.</summary>
    public double Pumped { get; }

    /// <summary>The network.</summary>
    public Network Network { get; }

    internal ImmutableArray<ElementFlow> Elements { get; }

    internal ReadOnlySpan<double> Pressures => pressures;

    /// <summary>A node's gauge pressure, Pa.</summary>
    /// <param name="node">The node; -1 gives 0.</param>
    public double PressureAt(int node) => node < 0 ? 0 : pressures[flow.CellOf[node]];

    /// <summary>A cell's gauge pressure, Pa.</summary>
    internal double PressureOf(int cell) => pressures[cell];

    /// <summary>A cell's name: its first passage, or what else lies there.</summary>
    internal string NameOf(int cell) => flow.Names[cell];

    /// <summary>How far a spool has travelled: 0 at rest, 1 fully moved.</summary>
    /// <param name="spool">Its number.</param>
    public double TravelOf(int spool) => travels[spool];
}

/// <summary>What flows through an element, from its first end to its second, m3/s.</summary>
internal readonly record struct ElementFlow(FlowElement Element, double Rate);

/// <summary>Steady flow of an assembly: one network, any number of gears and conditions. For one thread.</summary>
internal sealed class SteadyAssembly
{
    private readonly FlowBalance balance;
    private readonly SteadyFlow solver;
    private readonly Network network;

    public SteadyAssembly(Network network)
    {
        this.network = network;
        Flow = FlowDrafter.Compile(network);
        balance = new FlowBalance(Flow);
        solver = new SteadyFlow(Flow, balance);
    }

    /// <summary>The network as flow sees it.</summary>
    public FlowNetwork Flow { get; }

    /// <summary>The pressures last found; a run in time goes on from them.</summary>
    public FlowBalance Balance => balance;

    /// <summary>What was assumed because the file does not say.</summary>
    public IReadOnlyList<Assumption> Assumptions => Flow.Assumptions;

    /// <summary>Solves a gear from its static answer, so that spools and shut-in oil begin where that has them.</summary>
    public SteadyGear Solve(GearSolution start, FlowConditions conditions)
    {
        for (var node = 0; node < Flow.CellOf.Length; node++)
            balance.Pressure[Flow.CellOf[node]] = 1e3 * start.PressureAt(node);
        foreach (var (track, hub) in Flow.Arms) balance.Pressure[track] = balance.Pressure[hub];
        balance.Pressure[0] = 0;
        balance.Set(start.Inputs, conditions);
        var outcome = solver.Solve();
        for (var round = 0; round <= Flow.Regulators.Length && outcome.Converged && LowerOutlets(); round++) outcome = solver.Solve();
        return new SteadyGear(network, Flow, balance, outcome);
    }

    /// <summary>
    /// The static answer takes line to be held. Where it is not, the outlet of a regulator can be left at what was set, shut in above a feed that
    /// could never have brought it there: nothing flows, so it balances. Such an outlet begins again at its feed's pressure.
    /// </summary>
    private bool LowerOutlets()
    {
        var lowered = false;
        for (var i = 0; i < Flow.Elements.Length; i++)
        {
            var port = Flow.Elements[i];
            if (port.Kind != FlowKind.FeedPort || !balance.IsActive(i) || balance.IsPinned(port.B)) continue;
            if (balance.Pressure[port.B] <= balance.Pressure[port.A] + (1e3 * FlowDefaults.BallBand) || !IsShutIn(port.B)) continue;
            balance.Pressure[port.B] = balance.Pressure[port.A];
            lowered = true;
        }

        return lowered;
    }

    private bool IsShutIn(int cell)
    {
        for (var i = 0; i < Flow.Elements.Length; i++)
        {
            if ((Flow.Elements[i].A == cell || Flow.Elements[i].B == cell) && Math.Abs(balance.Flow[i]) > SteadyFlow.Tolerance * balance.Pumped) return false;
        }

        return true;
    }
}
