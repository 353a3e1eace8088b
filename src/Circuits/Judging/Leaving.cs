using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>The links that oil can leave each node by, in the order of the network, with what lies side by side as one opening.</summary>
internal sealed class Leaving
{
    private readonly Network network;
    private readonly int[] spots;
    private readonly bool[] passes;
    private readonly double[] area;

    /// <summary>For each node its first edge, and for each edge the node's next; -1 ends. The edges of a link are twice its number, and one more for the way back.</summary>
    private readonly int[] first;
    private readonly int[] next;

    /// <summary>The same by spots.</summary>
    private readonly int[] firstAt;
    private readonly int[] nextAt;

    /// <summary>Finds them, and changes the spots of openings that lie between the very same neighbours to one.</summary>
    /// <param name="solution">The state.</param>
    /// <param name="spots">For each node, its cell.</param>
    public Leaving(GearSolution solution, int[] spots)
    {
        network = solution.Network;
        this.spots = spots;
        passes = new bool[2 * network.Links.Length];
        foreach (var link in network.Links)
        {
            passes[2 * link.Index] = Passes(solution, link, link.A);
            passes[(2 * link.Index) + 1] = Passes(solution, link, link.B);
        }

        JoinTwins(solution);
        (first, next) = Chains(node => node);
        (firstAt, nextAt) = Chains(node => spots[node]);
        area = new double[passes.Length];
        SumSideBySide();
    }

    /// <summary>A node's first edge, or -1.</summary>
    public int First(int node) => first[node];

    /// <summary>The edge that comes after another of the same node, or -1.</summary>
    public int Next(int edge) => next[edge];

    /// <summary>An edge as a step.</summary>
    public Step StepOf(int edge)
    {
        var link = network.Links[edge >> 1];
        return (edge & 1) == 0 ? new Step(link.A, link.B, link) : new Step(link.B, link.A, link);
    }

    /// <summary>The area of a step together with what lies beside it, mm2.</summary>
    public double AreaOf(Step step) =>
        double.IsInfinity(step.Link.SquareMillimetres) ? double.PositiveInfinity : area[EdgeOf(step)];

    /// <summary>What lies beside a step, itself included, in the order of the network.</summary>
    public IEnumerable<string> ElementsAlong(Step step)
    {
        var before = -1;
        for (var edge = firstAt[spots[step.From]]; edge >= 0; edge = nextAt[edge])
        {
            if (spots[ToOf(edge)] != spots[step.To] || edge >> 1 == before) continue;
            before = edge >> 1;
            yield return network.Links[before].Element;
        }
    }

    private static int EdgeOf(Step step) => (2 * step.Link.Index) + (step.From == step.Link.A ? 0 : 1);

    private int FromOf(int edge) => (edge & 1) == 0 ? network.Links[edge >> 1].A : network.Links[edge >> 1].B;

    private int ToOf(int edge) => (edge & 1) == 0 ? network.Links[edge >> 1].B : network.Links[edge >> 1].A;

    /// <summary>
    /// Whether oil passes a link from one of its ends. While a chamber fills or empties, a check ball gives way to oil that
    /// comes from beyond its seat, and to none that comes from its pocket.
    /// </summary>
    private bool Passes(GearSolution solution, Link link, int from)
    {
        if (link.Gate.Kind == GateKind.Ball && network.Balls[link.Gate.Element].Seats.Length == 1) return from == link.B;
        return solution.IsOpen(link);
    }

    private (int[] First, int[] Next) Chains(Func<int, int> place)
    {
        var head = new int[spots.Length];
        Array.Fill(head, -1);
        var after = new int[passes.Length];
        for (var edge = passes.Length - 1; edge >= 0; edge--)
        {
            if (!passes[edge]) continue;
            var at = place(FromOf(edge));
            after[edge] = head[at];
            head[at] = edge;
        }

        return (head, after);
    }

    private void SumSideBySide()
    {
        var sum = new double[spots.Length];
        foreach (var head in firstAt)
        {
            for (var edge = head; edge >= 0; edge = nextAt[edge]) sum[spots[ToOf(edge)]] += network.Links[edge >> 1].SquareMillimetres;
            for (var edge = head; edge >= 0; edge = nextAt[edge]) area[edge] = sum[spots[ToOf(edge)]];
            for (var edge = head; edge >= 0; edge = nextAt[edge]) sum[spots[ToOf(edge)]] = 0;
        }
    }

    /// <summary>Openings that lie between the very same neighbours are one wider opening.</summary>
    private void JoinTwins(GearSolution solution)
    {
        List<(int Cell, bool In, bool Out)>?[]? neighbours = null;
        foreach (var link in network.Links)
        {
            var (forth, back) = (passes[2 * link.Index], passes[(2 * link.Index) + 1]);
            if (!forth && !back) continue;
            Note(link.A, link.B, back, forth);
            Note(link.B, link.A, forth, back);
        }

        if (neighbours is null) return;
        var known = new Dictionary<List<(int Cell, bool In, bool Out)>, int>(SameNeighbours.Instance);
        for (var node = 0; node < neighbours.Length; node++)
        {
            if (neighbours[node] is not { } around) continue;
            around.Sort();
            if (known.TryGetValue(around, out var twin)) spots[node] = solution.CellAt(twin);
            else known.Add(around, node);
        }

        void Note(int node, int other, bool goesIn, bool goesOut)
        {
            if (network.Nodes[node].Kind != NodeKind.Opening) return;
            neighbours ??= new List<(int Cell, bool In, bool Out)>?[network.Nodes.Length];
            var around = neighbours[node] ??= [];
            var neighbour = (solution.CellAt(other), goesIn, goesOut);
            if (!around.Contains(neighbour)) around.Add(neighbour);
        }
    }
}

/// <summary>Whether two openings have the same neighbours; each list is in order and holds each once.</summary>
internal sealed class SameNeighbours : IEqualityComparer<List<(int Cell, bool In, bool Out)>>
{
    public static SameNeighbours Instance { get; } = new();

    public bool Equals(List<(int Cell, bool In, bool Out)>? x, List<(int Cell, bool In, bool Out)>? y) => x!.SequenceEqual(y!);

    public int GetHashCode(List<(int Cell, bool In, bool Out)> obj)
    {
        var hash = obj.Count;
        foreach (var (cell, goesIn, goesOut) in obj) hash = (hash * 31) + (cell * 4) + (goesIn ? 2 : 0) + (goesOut ? 1 : 0);
        return hash;
    }
}
