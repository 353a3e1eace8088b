using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;

namespace Circuits.Tests.Solving.Flow;

/// <summary>An assembly compiled for flow, with its gears solved at rest flow.</summary>
internal sealed class FlowCase
{
    private readonly Dictionary<string, SolvedGear> gears;

    public FlowCase(Assembly assembly)
    {
        Network = NetworkBuilder.Build(assembly);
        var solved = SolvedAssembly.Of(Plan.Of(Network));
        gears = solved.Gears.ToDictionary(gear => gear.Gear.Name);
        Flow = FlowDrafter.Compile(Network);
        Balance = new FlowBalance(Flow);
        Steady = new SteadyAssembly(Network);
    }

    /// <summary>Oil without viscosity, so that every hole is as sharp as its law, and no pump.</summary>
    public static FlowConditions Thin { get; } = new(850, 1e-15, default);

    /// <summary>Thin oil and 25 L/min.</summary>
    public static FlowConditions Pumped { get; } = new(840, 9e-6, new PumpCurve(25e-3 / 60, 2e6));

    public Network Network { get; }

    public FlowNetwork Flow { get; }

    public FlowBalance Balance { get; }

    public SteadyAssembly Steady { get; }

    public IEnumerable<SolvedGear> Gears => gears.Values;

    public GearSolution Static(string gear = "G") => gears[gear].Solution;

    public SteadyGear Solve(FlowConditions conditions, string gear = "G") => Steady.Solve(Static(gear), conditions);

    public int Cell(string passage) => Flow.CellOf[Network.Nodes.Single(node => node.Name == (passage.Contains('.') ? passage : $"body.{passage}")).Index];

    public int Node(string passage) => Network.Nodes.Single(node => node.Name == $"body.{passage}").Index;

    /// <summary>Runs a gear in time from given pressures (kPa, by passage; all others none).</summary>
    public TimedOutcome Run(
        FlowConditions conditions, double seconds, double tolerance, Action<double> observe, string gear = "G",
        params (string Passage, double Kilopascals)[] start)
    {
        Array.Clear(Balance.Pressure);
        foreach (var (passage, kilopascals) in start) Balance.Pressure[Cell(passage)] = 1e3 * kilopascals;
        Balance.Set(Static(gear).Inputs, conditions);
        return new TimedFlow(Flow, Balance).Run(conditions, [], seconds, tolerance, observe);
    }
}
