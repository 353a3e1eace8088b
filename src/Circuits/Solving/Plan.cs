using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A link between two cells.</summary>
/// <param name="A">One cell.</param>
/// <param name="B">The other.</param>
/// <param name="Area">Its area, mm2; finite.</param>
/// <param name="Gate">What opens it.</param>
internal readonly record struct PlanLink(int A, int B, double Area, Gate Gate);

/// <summary>
/// A network compiled to arrays: nodes that nothing restricts from one another are one cell. Made once an assembly,
/// shared by all its gears; never changes.
/// </summary>
public sealed partial class Plan : IElementKinds<Network>
{
    private Plan(Network network)
    {
        Network = network;
        CellOf = MergeCells(network, out var cells);
        Cells = cells;
        LinkOf = new int[network.Links.Length];
        var links = new List<PlanLink>(network.Links.Length);
        foreach (var link in network.Links)
        {
            LinkOf[link.Index] = -1;
            var (a, b) = (CellOf[link.A], CellOf[link.B]);
            if (link.Gate.Kind == GateKind.Shut || a == b) continue;
            LinkOf[link.Index] = links.Count;
            links.Add(new PlanLink(a, b, link.SquareMillimetres, link.Gate));
        }

        Links = [.. links];
        Gated = GatedOf(Links);
        (First, Touching, Beyond) = Adjacency(Links, Cells);
        Pump = Cell(network.Pump);
        Compliance = new double[cells];
        this.Each(network);
        IsMeeting = new bool[cells];
        Array.Fill(IsMeeting, true);
        foreach (var node in network.Nodes) IsMeeting[CellOf[node.Index]] &= node.Kind == NodeKind.Opening;
    }

    /// <summary>The network.</summary>
    public Network Network { get; }

    /// <summary>Number of cells; cell 0 is the sump.</summary>
    public int Cells { get; }

    /// <summary>The cell of each node.</summary>
    internal int[] CellOf { get; }

    /// <summary>For each cell, whether it holds nothing but openings.</summary>
    internal bool[] IsMeeting { get; }

    /// <summary>For each network link its plan link, or -1 when it is metal or lies within one cell.</summary>
    internal int[] LinkOf { get; }

    internal PlanLink[] Links { get; }

    /// <summary>The links that something opens and closes.</summary>
    internal int[] Gated { get; }

    /// <summary>For each cell, where its links begin in <see cref="Touching"/>; one more entry than cells.</summary>
    internal int[] First { get; }

    internal int[] Touching { get; }

    /// <summary>For each entry of <see cref="Touching"/>, the cell at the other end.</summary>
    internal int[] Beyond { get; }

    internal int Pump { get; }

    /// <summary>
    /// For each cell, the volume of the clutch chambers and accumulators in it, mL: what keeps oil under pressure once it
    /// is shut in. Passages are stiff and keep none.
    /// </summary>
    internal double[] Compliance { get; }

    /// <summary>What the pump makes when nothing regulates it, kPa.</summary>
    internal double UnregulatedPressure =>
        Network.Assembly.Unit.Pump?.Relief?.Kilopascals ?? Stacking.Defaults.PumpRelief;

    /// <summary>Compiles a network.</summary>
    /// <param name="network">The network.</param>
    public static Plan Of(Network network) => new(network);

    private static int[] MergeCells(Network network, out int cells)
    {
        var parent = new int[network.Nodes.Length];
        for (var i = 0; i < parent.Length; i++) parent[i] = i;
        foreach (var link in network.Links)
        {
            if (link.Gate.Kind != GateKind.Open || !double.IsInfinity(link.SquareMillimetres)) continue;
            var (a, b) = (Root(parent, link.A), Root(parent, link.B));
            parent[Math.Max(a, b)] = Math.Min(a, b);
        }

        var cellOf = new int[parent.Length];
        cells = 0;
        for (var i = 0; i < parent.Length; i++)
            cellOf[i] = parent[i] == i ? cells++ : cellOf[Root(parent, i)];
        return cellOf;
    }

    private static int Root(int[] parent, int node)
    {
        while (parent[node] != node) node = parent[node] = parent[parent[node]];
        return node;
    }

    private static (int[] First, int[] Touching, int[] Beyond) Adjacency(PlanLink[] links, int cells)
    {
        var first = new int[cells + 1];
        foreach (var link in links)
        {
            first[link.A + 1]++;
            first[link.B + 1]++;
        }

        for (var i = 0; i < cells; i++) first[i + 1] += first[i];
        var next = first[..cells];
        var touching = new int[2 * links.Length];
        var beyond = new int[2 * links.Length];
        for (var i = 0; i < links.Length; i++)
        {
            Touch(links[i].A, i, links[i].B);
            Touch(links[i].B, i, links[i].A);
        }

        return (first, touching, beyond);

        void Touch(int cell, int link, int other)
        {
            touching[next[cell]] = link;
            beyond[next[cell]++] = other;
        }
    }

    private int Cell(int node) => node < 0 ? -1 : CellOf[node];

    private static int[] GatedOf(PlanLink[] links)
    {
        var gated = new List<int>(links.Length);
        for (var link = 0; link < links.Length; link++)
        {
            if (links[link].Gate.Kind != GateKind.Open) gated.Add(link);
        }

        return [.. gated];
    }

    private Signal[] ByCell(ImmutableArray<Signal> signals) =>
        [.. signals.Where(signal => signal.Node >= 0).Select(signal => signal with { Node = CellOf[signal.Node] })];

    void IElementKinds<Network>.Passages(Network network) { } // cells

    void IElementKinds<Network>.Openings(Network network) { } // links

    void IElementKinds<Network>.Solenoids(Network network) { } // those that hold a pressure are regulators; what switches the gear says

    void IElementKinds<Network>.Lever(Network network) { } // links; the gear says where it stands

    void IElementKinds<Network>.Restrictions(Network network) { } // links

    void IElementKinds<Network>.Leaks(Network network) { } // links
}
