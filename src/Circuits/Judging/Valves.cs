using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Valves(Network network)
    {
        foreach (var spool in network.Spools)
        {
            // What the answer takes of the model's valve stands beside it.
            var (name, movedBy, heldBy, springs, stuck, _) = spool;
            bytes.Add(names.Of(name));
            bytes.Add(springs);
            bytes.Add(stuck is { } at ? (int)at : -1);
            Add(movedBy);
            Add(heldBy);
        }
    }
}

internal sealed partial class PositionReports
{
    public void Valves(GearSolution state)
    {
        for (var i = 0; i < state.Network.Spools.Length; i++)
        {
            var spool = state.Network.Spools[i];
            Add(PositionKind.Valve, spool.Name, new Stand.Spool(spool.Stuck is null && state.Moved[i], spool.Stuck), spool.Source.Place);
        }
    }
}
