using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Openings that lie between the very same neighbours: they are one wider opening. Holds work arrays.</summary>
internal sealed class Twins
{
    /// <summary>For each node, where its neighbours begin among all, and how many they are; for openings only.</summary>
    private int[] start = [];
    private int[] count = [];

    /// <summary>Neighbours: four times the cell, and two if oil comes from it, and one if oil goes there.</summary>
    private int[] neighbours = [];

    /// <summary>Openings by a number made of their neighbours; chained.</summary>
    private int[] known = [];
    private int[] before = [];

    /// <summary>Gives all of them the spot of the first.</summary>
    /// <param name="solution">The state.</param>
    /// <param name="passes">For each link, whether oil passes from its first end, and from its second.</param>
    /// <param name="spots">For each node, its cell.</param>
    public void Join(GearSolution solution, ReadOnlySpan<bool> passes, int[] spots)
    {
        var network = solution.Network;
        var nodes = network.Nodes.Length;
        var start = WorkArray.Filled(ref this.start, nodes + 1, 0);
        var count = WorkArray.Filled(ref this.count, nodes, 0);
        foreach (var link in network.Links)
        {
            if (!passes[2 * link.Index] && !passes[(2 * link.Index) + 1]) continue;
            start[link.A + 1]++;
            start[link.B + 1]++;
        }

        for (var node = 0; node < nodes; node++) start[node + 1] += start[node];
        var neighbours = WorkArray.Of(ref this.neighbours, start[nodes]);
        foreach (var link in network.Links)
        {
            var (forth, back) = (passes[2 * link.Index] ? 1 : 0, passes[(2 * link.Index) + 1] ? 1 : 0);
            if (forth + back == 0) continue;
            neighbours[start[link.A] + count[link.A]++] = (4 * solution.CellAt(link.B)) + (2 * back) + forth;
            neighbours[start[link.B] + count[link.B]++] = (4 * solution.CellAt(link.A)) + (2 * forth) + back;
        }

        var known = WorkArray.Filled(ref this.known, nodes, -1);
        var before = WorkArray.Of(ref this.before, nodes);
        for (var node = 0; node < nodes; node++)
        {
            if (count[node] == 0 || network.Nodes[node].Kind != NodeKind.Opening) continue;
            var around = neighbours.Slice(start[node], count[node]);
            around.Sort();
            around = around[..EachOnce(around)];
            count[node] = around.Length;
            var place = (int)(NumberOf(around) % (uint)nodes);
            var twin = known[place];
            while (twin >= 0 && !around.SequenceEqual(neighbours.Slice(start[twin], count[twin]))) twin = before[twin];
            if (twin >= 0) spots[node] = solution.CellAt(twin);
            else (before[node], known[place]) = (known[place], node);
        }
    }

    /// <summary>Moves each value of a sorted row to its front, once, and says how many there are.</summary>
    private static int EachOnce(Span<int> row)
    {
        var kept = 1;
        for (var i = 1; i < row.Length; i++)
        {
            if (row[i] != row[kept - 1]) row[kept++] = row[i];
        }

        return kept;
    }

    private static uint NumberOf(ReadOnlySpan<int> around)
    {
        var number = (uint)around.Length;
        foreach (var neighbour in around) number = (number * 31) + (uint)neighbour;
        return number;
    }
}
