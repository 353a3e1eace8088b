using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>A settled gear with what flows through its places.</summary>
/// <param name="Settled">The gear.</param>
/// <param name="Flow">Its network as flow sees it.</param>
internal sealed record GearAtCondition(SteadyGear Settled, FlowNetwork Flow)
{
    private double[]? through;

    /// <summary>The node of a need, by the first of its passages that this assembly has; -1 where it has none.</summary>
    public int Find(UnitNeed need)
    {
        foreach (var passage in need.Places)
        {
            if (Settled.Network.FindNode(passage) is >= 0 and var node) return node;
        }

        return -1;
    }

    /// <summary>A node's pressure, kPa; 0 where there is none.</summary>
    public double Kilopascals(int node) => Settled.PressureAt(node) / 1e3;

    /// <summary>What flows through a node's place, m3/s; 0 where there is none.</summary>
    public double Through(int node) => node < 0 ? 0 : (through ??= Throughflow.Of(Flow, Settled))[Flow.CellOf[node]];
}
