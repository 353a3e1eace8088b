using System.Collections.Immutable;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// The links that oil can leave each node by, in the order of the network, with what lies side by side as one opening.
/// Holds work arrays; what it says of a gear is overwritten when it looks at the next.
/// </summary>
internal sealed class Leaving
{
    private readonly Twins twins = new();
    private ImmutableArray<Link> links = [];
    private int[] spots = [];
    private bool[] passes = [];
    private double[] area = [];
    private double[] sum = [];

    /// <summary>For each node its first edge, and for each edge the node's next; -1 ends. The edges of a link are twice its number, and one more for the way back.</summary>
    private int[] first = [];
    private int[] next = [];

    /// <summary>The same by spots.</summary>
    private int[] firstAt = [];
    private int[] nextAt = [];

    /// <summary>Finds them, and changes the spots of openings that lie between the very same neighbours to one.</summary>
    /// <param name="solution">The state.</param>
    /// <param name="places">For each node, its cell.</param>
    public void Find(GearSolution solution, int[] places)
    {
        var network = solution.Network;
        (links, spots) = (network.Links, places);
        var passes = WorkArray.Of(ref this.passes, 2 * links.Length);
        foreach (var link in links)
        {
            // While a chamber fills or empties, a check ball gives way to oil that comes from beyond its seat, and to none that
            // comes from its pocket.
            var isCheck = link.Gate.Kind == GateKind.Ball && network.Balls[link.Gate.Element].Seats.Length == 1;
            var isOpen = !isCheck && solution.IsOpen(link);
            passes[2 * link.Index] = isOpen;
            passes[(2 * link.Index) + 1] = isCheck || isOpen;
        }

        twins.Join(solution, passes, spots);
        var nodes = network.Nodes.Length;
        var first = WorkArray.Filled(ref this.first, nodes, -1);
        var next = WorkArray.Of(ref this.next, passes.Length);
        var firstAt = WorkArray.Filled(ref this.firstAt, nodes, -1);
        var nextAt = WorkArray.Of(ref this.nextAt, passes.Length);
        for (var edge = passes.Length - 1; edge >= 0; edge--)
        {
            if (!passes[edge]) continue;
            var node = FromOf(edge);
            (next[edge], first[node]) = (first[node], edge);
            (nextAt[edge], firstAt[spots[node]]) = (firstAt[spots[node]], edge);
        }

        SumSideBySide(nodes);
    }

    /// <summary>A node's first edge, or -1.</summary>
    public int First(int node) => first[node];

    /// <summary>The edge that comes after another of the same node, or -1.</summary>
    public int Next(int edge) => next[edge];

    /// <summary>An edge as a step.</summary>
    public Step StepOf(int edge)
    {
        var link = links[edge >> 1];
        return (edge & 1) == 0 ? new Step(link.A, link.B, link) : new Step(link.B, link.A, link);
    }

    /// <summary>The area of a step together with what lies beside it, mm2.</summary>
    public double AreaOf(in Step step) =>
        double.IsInfinity(step.Link.SquareMillimetres) ? double.PositiveInfinity : area[EdgeOf(step)];

    /// <summary>Adds what lies beside a step, itself included, in the order of the network, to what is there already; each once.</summary>
    public void AddElementsAlong(in Step step, List<string> elements)
    {
        for (var edge = firstAt[spots[step.From]]; edge >= 0; edge = nextAt[edge])
        {
            if (spots[ToOf(edge)] == spots[step.To] && !elements.Contains(links[edge >> 1].Element)) elements.Add(links[edge >> 1].Element);
        }
    }

    private static int EdgeOf(in Step step) => (2 * step.Link.Index) + (step.From == step.Link.A ? 0 : 1);

    private int FromOf(int edge) => (edge & 1) == 0 ? links[edge >> 1].A : links[edge >> 1].B;

    private int ToOf(int edge) => (edge & 1) == 0 ? links[edge >> 1].B : links[edge >> 1].A;

    private void SumSideBySide(int nodes)
    {
        var area = WorkArray.Of(ref this.area, 2 * links.Length);
        var sum = WorkArray.Filled(ref this.sum, nodes, 0);
        for (var spot = 0; spot < nodes; spot++)
        {
            var head = firstAt[spot];
            for (var edge = head; edge >= 0; edge = nextAt[edge]) sum[spots[ToOf(edge)]] += links[edge >> 1].SquareMillimetres;
            for (var edge = head; edge >= 0; edge = nextAt[edge]) area[edge] = sum[spots[ToOf(edge)]];
            for (var edge = head; edge >= 0; edge = nextAt[edge]) sum[spots[ToOf(edge)]] = 0;
        }
    }
}
