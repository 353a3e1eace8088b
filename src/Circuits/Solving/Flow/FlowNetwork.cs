using Circuits.Laws;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>A spool as a spring against pressures.</summary>
/// <param name="Cells">Cells that act on it.</param>
/// <param name="Factors">Newtons per pascal of each; positive where it moves the spool, negative where it holds it.</param>
/// <param name="Preload">Net spring force at rest, N.</param>
/// <param name="Range">Force over which it travels, N; above zero.</param>
internal sealed record FlowSpool(int[] Cells, double[] Factors, double Preload, double Range)
{
    /// <summary>Its full travel and the overlap of its ports, m, where they were measured.</summary>
    public (double Travel, double Overlap)? Lap { get; init; }
}

/// <summary>A two-way ball.</summary>
/// <param name="Beyond">The cells beyond its two seats.</param>
internal sealed record FlowBall(int[] Beyond);

/// <summary>A regulator, relief or pressure solenoid.</summary>
/// <param name="Regulated">The cell that it watches.</param>
/// <param name="Spring">Set pressure of the spring alone, Pa.</param>
/// <param name="Cells">Cells that add to the set pressure.</param>
/// <param name="Factors">Pascals per pascal of each.</param>
/// <param name="IsCommanded">Whether the gear sets it (a pressure solenoid).</param>
/// <param name="Band">Difference over which a port opens, Pa.</param>
internal sealed record FlowRegulator(int Regulated, double Spring, int[] Cells, double[] Factors, bool IsCommanded, double Band)
{
    /// <summary>Its spool, where it was measured: the band is what follows from it then.</summary>
    public RegulatorSizes? Spool { get; init; }
}

/// <summary>
/// A network compiled for flow: places of one pressure are one cell, and what oil flows through between them is an element.
/// The sparse system's order is found here, once; gears, conditions and time steps share it. Never changes.
/// </summary>
internal sealed class FlowNetwork
{
    /// <summary>Number of cells; cell 0 is the sump.</summary>
    public required int Cells { get; init; }

    /// <summary>The cell of each of the network's nodes.</summary>
    public int[] CellOf { get; init; } = [];

    /// <summary>Cells that are none of the network's: the ends of tracks, each with the passage that it belongs to.</summary>
    public IReadOnlyList<(int Cell, int Hub)> Arms { get; init; } = [];

    /// <summary>A name for each cell: its first passage, or what else lies there.</summary>
    public required string[] Names { get; init; }

    public required FlowElement[] Elements { get; init; }

    public FlowSpool[] Spools { get; init; } = [];

    public FlowBall?[] Balls { get; init; } = [];

    public FlowRegulator[] Regulators { get; init; } = [];

    public FlowPiston[] Pistons { get; init; } = [];

    /// <summary>Volume of oil in each cell with every piston at rest, m3.</summary>
    public double[] Volumes { get; init; } = [];

    /// <summary>The cell that the pump feeds, or -1.</summary>
    public int Pump { get; init; } = -1;

    /// <summary>What was assumed because the file does not say.</summary>
    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    /// <summary>The same of what clutches and accumulators hold, which counts in time alone.</summary>
    public IReadOnlyList<Assumption> PistonAssumptions { get; init; } = [];

    /// <summary>Pairs of unknowns that some balance couples; the order of elimination is found from them.</summary>
    public IReadOnlyList<(int Row, int Column)> Pairs { get; private set; } = [];

    /// <summary>Where every system of this network holds its numbers.</summary>
    public SparsePattern Pattern { get; private set; } = new(0, []);

    /// <summary>A system with room for every element, to be used by one thread.</summary>
    public SparseSystem NewSystem() => new(Pattern);

    /// <summary>Finds the order of elimination, and tells elements their places in every system made by it, for good.</summary>
    /// <returns>This network, ready to be solved.</returns>
    public FlowNetwork Order()
    {
        Pairs = [.. Elements.SelectMany(element => element.DependsOn.SelectMany(cell => new[] { (element.A, cell), (element.B, cell) }))
            .Concat(Pistons.Select(piston => (piston.Apply, cell: piston.Release)))
            .Where(pair => pair.Item1 > 0 && pair.cell > 0).Select(pair => (pair.Item1 - 1, pair.cell - 1)).Distinct()];
        Pattern = new SparsePattern(Cells - 1, Pairs);
        foreach (var element in Elements)
        {
            element.PlacesA = [.. element.DependsOn.Select(cell => PlaceOf(element.A, cell))];
            element.PlacesB = [.. element.DependsOn.Select(cell => PlaceOf(element.B, cell))];
        }

        foreach (var piston in Pistons)
        {
            piston.Places =
            [
                PlaceOf(piston.Apply, piston.Apply), PlaceOf(piston.Apply, piston.Release),
                PlaceOf(piston.Release, piston.Apply), PlaceOf(piston.Release, piston.Release),
            ];
        }

        return this;
    }

    private int PlaceOf(int row, int column) => row > 0 && column > 0 ? Pattern.PlaceOf(row - 1, column - 1) : -1;
}
