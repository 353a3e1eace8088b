using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>What a network's clutches, accumulators and passages hold; what each kind of element holds stands in that kind's file.</summary>
internal sealed partial class PistonDrafter : IElementKinds<Network>
{
    private readonly Network network;
    private readonly int[] cellOf;
    private readonly Action<Assumption> assume;
    private readonly List<FlowPiston> clutches = [];
    private readonly List<FlowPiston> accumulators = [];

    /// <summary>Works it out.</summary>
    /// <param name="network">The network.</param>
    /// <param name="cellOf">The cell of each node.</param>
    /// <param name="cells">How many cells there are.</param>
    /// <param name="assume">Takes a sentence and an element for every size that had to be assumed.</param>
    public PistonDrafter(Network network, int[] cellOf, int cells, Action<Assumption> assume)
    {
        this.network = network;
        this.cellOf = cellOf;
        this.assume = assume;
        Volumes = new double[cells];
        this.Each(network);

        // The arm of a track has a share too small to matter, but not none.
        for (var cell = 1; cell < cells; cell++) Volumes[cell] = Math.Max(Volumes[cell], 1e-7);
    }

    /// <summary>The pistons, those of clutches first.</summary>
    public FlowPiston[] Pistons => [.. clutches, .. accumulators];

    /// <summary>Oil in each cell with pistons at rest, m3.</summary>
    public double[] Volumes { get; }

    public void Openings(Network network) { } // hold no oil that counts

    public void Balls(Network network) { } // hold no oil that counts

    public void Valves(Network network) { } // what a spool pushes out of its way is its lag

    public void Regulators(Network network) { } // hold no oil that counts

    public void Solenoids(Network network) { } // hold no oil that counts

    public void Lever(Network network) { } // holds no oil that counts

    public void Restrictions(Network network) { } // hold no oil that counts

    public void Leaks(Network network) { } // hold no oil that counts
}
