using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Matrix;

/// <summary>A network with the gears that were asked for so far. For use by several threads: one that asks for a gear waits for another that solves it.</summary>
internal sealed class SolvedNetwork
{
    private readonly UnitJudge judge;
    private readonly Network network;
    private readonly Func<AssemblySolver>? make;
    private readonly SolvedAssembly? before;
    private readonly (SolvedGear State, ImmutableArray<ClutchControls> Controls)?[] gears;
    private AssemblySolver? solver;
    private FlowAnswers? flow;

    /// <summary>A network that is solved as its gears are asked for.</summary>
    public SolvedNetwork(UnitJudge judge, Network network, ImmutableArray<GearInputs> inputs)
    {
        (this.judge, this.network) = (judge, network);
        make = () => new AssemblySolver(Plan.Of(network), inputs);
        gears = new (SolvedGear, ImmutableArray<ClutchControls>)?[inputs.Length];
    }

    /// <summary>An assembly that was solved before.</summary>
    public SolvedNetwork(UnitJudge judge, SolvedAssembly before)
    {
        (this.judge, network) = (judge, before.Network);
        this.before = before;
        gears = new (SolvedGear, ImmutableArray<ClutchControls>)?[before.Gears.Length];
    }

    /// <summary>A gear, solved once.</summary>
    /// <param name="gear">Its number.</param>
    /// <param name="ways">Looks for where its clutches are metered; the asking thread's own.</param>
    public (SolvedGear State, ImmutableArray<ClutchControls> Controls) Solve(int gear, Ways ways)
    {
        lock (gears)
        {
            if (gears[gear] is { } made) return made;
            var state = before?.Gears[gear] ?? (solver ??= make!()).Solve(gear);
            var solved = (state, UnitJudge.ControlsOf(state.Solution, ways.Of(state.Solution)));
            gears[gear] = solved;
            return solved;
        }
    }

    /// <summary>What flows at the unit's conditions; null where the static answer alone is asked for.</summary>
    public FlowAnswers? Flow
    {
        get
        {
            lock (gears)
            {
                return flow ??= before is not null ? judge.FlowOf(before) : judge.FlowOf(network, Answer);
            }
        }
    }

    /// <summary>A gear's static answer.</summary>
    /// <param name="gear">Its number.</param>
    public GearSolution Answer(int gear)
    {
        lock (gears) return gears[gear]?.State.Solution ?? before?.Gears[gear].Solution ?? (solver ??= make!()).Solve(gear).Solution;
    }

    /// <summary>Lets go of what solving works with until a further gear is asked for.</summary>
    public void Rest()
    {
        lock (gears) solver?.Rest();
    }
}

/// <summary>Networks that were solved before, many as long as keeping them pays. For use by several threads.</summary>
internal sealed class KeptNetworks
{
    /// <summary>Networks that are kept while it pays; then all are forgotten.</summary>
    private const int Many = 512;

    /// <summary>Networks that are kept else: equal ones often follow one another closely.</summary>
    private const int Few = 8;

    /// <summary>It pays while one in so many is asked for again: what is kept has to be copied by collections.</summary>
    private const int Worth = 16;

    /// <summary>Where none of so many was asked for again, none of the others will be.</summary>
    private const int Tried = 96;

    private readonly Dictionary<UInt128, SolvedNetwork> networks = [];
    private int most = Many;
    private int again;

    /// <summary>A network that was solved before, or the new one.</summary>
    /// <param name="key">What solver and judge see of it.</param>
    /// <param name="make">Makes it; solves nothing yet.</param>
    public SolvedNetwork Get(UInt128 key, Func<SolvedNetwork> make)
    {
        lock (networks)
        {
            if (networks.TryGetValue(key, out var known))
            {
                again++;
                return known;
            }

            if (networks.Count == most || (networks.Count == Tried && again == 0))
            {
                if (again < most / Worth) most = Few;
                again = 0;
                networks.Clear();
            }

            return networks[key] = make();
        }
    }
}
