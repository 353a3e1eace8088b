using System.Collections.Immutable;
using Circuits.Judging.Changes;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>
/// Settled flow of one assembly at the conditions of its unit, each worked out when it is first asked for. Several threads may ask; they wait for
/// one another.
/// </summary>
internal sealed class FlowAnswers
{
    private readonly Lock working = new();
    private readonly Network network;
    private readonly Func<int, GearSolution> start;
    private readonly ImmutableArray<FlowConditions> oils;
    private readonly SteadyGear?[,] known;
    private readonly List<Assumption> assumptions;
    private SteadyAssembly? steady;

    /// <summary>An assembly.</summary>
    /// <param name="network">Its network.</param>
    /// <param name="start">The static answer of a gear by its number, from which the search begins.</param>
    /// <param name="points">The conditions.</param>
    public FlowAnswers(Network network, Func<int, GearSolution> start, ImmutableArray<OperatingPoint> points)
    {
        (this.network, this.start) = (network, start);
        Points = points;
        var unit = network.Assembly.Unit;
        assumptions = [];
        oils = [.. points.Select(point => FlowConditions.Of(unit, point.Celsius, point.RevolutionsPerMinute, assumptions))];
        known = new SteadyGear?[unit.Gears.Length, points.Length];
    }

    /// <summary>The conditions.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    /// <summary>Oil and pump at each condition.</summary>
    public ImmutableArray<FlowConditions> Oils => oils;

    /// <summary>What was assumed because the file does not say.</summary>
    public IEnumerable<Assumption> Assumptions
    {
        get
        {
            lock (working) return [.. assumptions, .. Compiled.Assumptions];
        }
    }

    /// <summary>The network as flow sees it.</summary>
    public FlowNetwork Flow
    {
        get
        {
            lock (working) return Compiled.Flow;
        }
    }

    /// <summary>The network.</summary>
    public Network Network => network;

    /// <summary>Force that turning oil adds to each clutch's piston in a gear, N; empty where nothing turns.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="point">The condition's number.</param>
    /// <param name="train">The gear train.</param>
    public ImmutableArray<double> HeadsIn(int gear, int point, ShiftTrain train) => DrumHeads.Of(
        network, train, network.Assembly.Unit.Gears[gear], Points[point].RevolutionsPerMinute, oils[point].Density, []);

    private SteadyAssembly Compiled => steady ??= new SteadyAssembly(network);

    /// <summary>A gear at a condition.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="point">The condition's number.</param>
    public SteadyGear In(int gear, int point)
    {
        lock (working) return known[gear, point] ??= Compiled.Solve(start(gear), oils[point]);
    }
}
