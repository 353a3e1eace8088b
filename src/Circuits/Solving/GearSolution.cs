using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>One gear state of one assembly: positions and pressures that agree, or word that none do. Immutable.</summary>
public sealed record GearSolution
{
    private readonly Plan plan;
    private readonly double[] pressure;
    private readonly OilState[] oil;
    private readonly int[] distance;
    private readonly bool[] isSource;
    private readonly double[]? told;

    internal GearSolution(Plan plan, PressureField field, Positions positions, GearInputs inputs, bool settled, ImmutableArray<string> cycle)
    {
        this.plan = plan;
        pressure = [.. field.Pressure];
        oil = OilStates.Of(plan, field);
        distance = Distances(plan, field);
        isSource = new bool[pressure.Length];
        for (var cell = 1; cell < isSource.Length; cell++) isSource[cell] = field.Fixing[cell] != Fixing.Free && pressure[cell] > 0;
        Settled = settled;
        Cycle = cycle;
        // Its own copy, which nothing moves any more.
        Positions = positions.Copy();
        Inputs = inputs;
        Moved = ImmutableCollectionsMarshal.AsImmutableArray(Positions.Moved);
        Balls = ImmutableCollectionsMarshal.AsImmutableArray(Positions.Balls);
        Modes = ImmutableCollectionsMarshal.AsImmutableArray(Positions.Modes);
        var sets = new double[plan.Regulators.Length];
        for (var i = 0; i < sets.Length; i++) sets[i] = field.SetOf(i, inputs);
        Sets = ImmutableCollectionsMarshal.AsImmutableArray(sets);
    }

    /// <summary>The network.</summary>
    public Network Network => plan.Network;

    /// <summary>Whether positions and pressures agree.</summary>
    public bool Settled { get; }

    /// <summary>When they do not: what goes to and fro.</summary>
    public ImmutableArray<string> Cycle { get; }

    /// <summary>When they do not: each state that it goes through, this one first. Empty when it settles.</summary>
    public ImmutableArray<GearSolution> Phases { get; init; } = [];

    /// <summary>What the gear set from outside.</summary>
    public GearInputs Inputs { get; }

    /// <summary>For each spool, whether it is moved.</summary>
    public ImmutableArray<bool> Moved { get; }

    /// <summary>For each ball, the seat that it closes, or -1.</summary>
    public ImmutableArray<int> Balls { get; }

    /// <summary>For each regulator, its mode (<see cref="RegulatorModes"/>).</summary>
    public ImmutableArray<int> Modes { get; }

    /// <summary>For each regulator, its set pressure, kPa; infinite for a solenoid that gives its whole feed.</summary>
    public ImmutableArray<double> Sets { get; }

    internal Positions Positions { get; }

    /// <summary>Pressure of each cell, for the next gear's trapped oil.</summary>
    internal double[] CellPressures => pressure;

    /// <summary>Whether the cells that hold trapped oil would have, from pressures kept, the pressures that they have, kPa, but for a tolerance.</summary>
    internal bool Traps(ReadOnlySpan<double> kept, double tolerance)
    {
        for (var cell = 0; cell < oil.Length; cell++)
        {
            if (oil[cell] == OilState.Trapped && !(Math.Abs(kept[cell] - pressure[cell]) <= tolerance)) return false;
        }

        return true;
    }

    /// <summary>A node's pressure, kPa.</summary>
    /// <param name="node">The node; -1 gives 0.</param>
    public double PressureAt(int node) => node < 0 ? 0 : told is null ? pressure[plan.CellOf[node]] : told[node];

    /// <summary>The same positions with the pressures that flow comes to: what is told of them then holds at a condition.</summary>
    /// <param name="kilopascals">A node's pressure there, kPa.</param>
    internal GearSolution Under(Func<int, double> kilopascals) => new(this, [.. Network.Nodes.Select(node => kilopascals(node.Index))]);

    private GearSolution(GearSolution still, double[] told)
        : this(still) => this.told = told;

    /// <summary>What a node's oil is joined to.</summary>
    /// <param name="node">The node.</param>
    public OilState OilAt(int node) => oil[plan.CellOf[node]];

    /// <summary>
    /// How many passages oil enters from the nearest source (pump, fixed pressure, or a regulator that holds counts on from
    /// its own supply) to a node; the openings on the way do not count. A large number when no source reaches it.
    /// </summary>
    /// <param name="node">The node.</param>
    public int StepsFromSource(int node) => distance[plan.CellOf[node]];

    /// <summary>Whether a node is held under pressure: by the pump, from outside, or by a regulator.</summary>
    /// <param name="node">The node.</param>
    public bool IsSource(int node) => isSource[plan.CellOf[node]];

    /// <summary>The number of the cell that a node belongs to; nodes of one cell always have one pressure.</summary>
    /// <param name="node">The node.</param>
    public int CellAt(int node) => plan.CellOf[node];

    /// <summary>
    /// Whether oil passes a link. A regulator that holds passes oil from its supply to its outlet.
    /// </summary>
    /// <param name="link">The link.</param>
    public bool IsOpen(Link link) => link.Gate.Kind switch
    {
        GateKind.Open => true,
        GateKind.Valve => Moved[link.Gate.Element] == (link.Gate.Position == 1),
        GateKind.Ball => Balls[link.Gate.Element] != link.Gate.Position,
        GateKind.Solenoid => Inputs.Fed[link.Gate.Element] == (link.Gate.Position == 1),
        GateKind.Lever => Inputs.Lever == link.Gate.Position,
        GateKind.Regulator => Modes[link.Gate.Element] == link.Gate.Position
            || (Modes[link.Gate.Element] == RegulatorModes.Holding && link.Gate.Position == RegulatorModes.Feeding),
        GateKind.Shut => false,
    };

    /// <summary>Line pressure, kPa; the highest pressure there is when the unit has no pump.</summary>
    public double Line => told is not null && Network.Pump >= 0 ? told[Network.Pump] : plan.Pump >= 0 ? pressure[plan.Pump] : pressure.Max();

    private static int[] Distances(Plan plan, PressureField field)
    {
        var steps = new int[plan.Cells];
        Array.Fill(steps, int.MaxValue);
        var queue = new PriorityQueue<int, int>();
        for (var cell = 1; cell < plan.Cells; cell++)
        {
            if (field.Fixing[cell] is not (Fixing.Pump or Fixing.Given) || field.Pressure[cell] <= 0) continue;
            steps[cell] = 0;
            queue.Enqueue(cell, 0);
        }

        while (queue.TryDequeue(out var cell, out var here))
        {
            if (here > steps[cell]) continue;
            foreach (var next in field.Open.From(cell)) Reach(cell, next);
            for (var i = 0; i < plan.Regulators.Length; i++)
            {
                if (plan.Regulators[i].From == cell && field.HeldBy[plan.Regulators[i].Out] == i) Reach(cell, plan.Regulators[i].Out);
            }
        }

        return steps;

        void Reach(int cell, int next)
        {
            var there = steps[cell] + (plan.IsMeeting[next] ? 0 : 1);
            if (next == 0 || steps[next] <= there) return;
            steps[next] = there;
            queue.Enqueue(next, there);
        }
    }
}
