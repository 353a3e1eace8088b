using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Matrix;

/// <summary>A network without metal, and what each gear sets.</summary>
internal sealed record OpenNetwork(Network Network, ImmutableArray<GearInputs> Inputs);

/// <summary>A network with the gears that were asked for so far. Not for use by several threads at once.</summary>
internal sealed class SolvedNetwork
{
    private AssemblySolver? solver;
    private int known;
    private readonly SolvedAssembly? before;
    private readonly (SolvedGear State, ImmutableArray<ClutchControls> Controls)?[] gears;

    /// <summary>A network that is solved as its gears are asked for.</summary>
    public SolvedNetwork(OpenNetwork network)
    {
        solver = new AssemblySolver(Plan.Of(network.Network), network.Inputs);
        gears = new (SolvedGear, ImmutableArray<ClutchControls>)?[network.Inputs.Length];
    }

    /// <summary>An assembly that was solved before.</summary>
    public SolvedNetwork(SolvedAssembly before)
    {
        this.before = before;
        gears = new (SolvedGear, ImmutableArray<ClutchControls>)?[before.Gears.Length];
    }

    /// <summary>A gear, solved once.</summary>
    public (SolvedGear State, ImmutableArray<ClutchControls> Controls) Solve(int gear)
    {
        if (gears[gear] is { } made) return made;
        var state = before?.Gears[gear] ?? solver!.Solve(gear);
        var solved = (state, UnitJudge.ControlsOf(state.Solution, new Ways(state.Solution)));
        gears[gear] = solved;

        // What a solver works with is much more than what it leaves.
        if (++known == gears.Length) solver = null;
        return solved;
    }
}

/// <summary>Networks that were solved before, as long as keeping them pays. For one thread.</summary>
internal sealed class KeptNetworks
{
    /// <summary>Networks that are kept at most; then all are forgotten.</summary>
    private const int Most = 512;

    /// <summary>One of so many must have been asked for again, or none is kept any more: what is kept has to be copied by collections.</summary>
    private const int Worth = 16;

    private readonly Dictionary<UInt128, SolvedNetwork> networks = [];
    private int again;
    private bool pays = true;

    /// <summary>A network that was solved before, or null.</summary>
    /// <param name="key">What solver and judge see of it.</param>
    public SolvedNetwork? Find(UInt128 key)
    {
        if (!networks.TryGetValue(key, out var network)) return null;
        again++;
        return network;
    }

    /// <summary>Keeps a network.</summary>
    public void Keep(UInt128 key, SolvedNetwork network)
    {
        if (!pays) return;
        if (networks.Count == Most)
        {
            pays = again >= Most / Worth;
            again = 0;
            networks.Clear();
            if (!pays) return;
        }

        networks.Add(key, network);
    }
}
