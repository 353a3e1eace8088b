using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What oil passes between two passages without meeting a third: one link, or several in series through openings. Runs
/// side by side between the same two cells count as one opening with the sum of their areas.
/// </summary>
internal sealed class Runs
{
    private readonly GearSolution solution;
    private readonly Network network;
    private readonly int[] spots;
    private readonly (bool Forth, bool Back)[] passes;
    private readonly Dictionary<long, double> together;
    private readonly Dictionary<long, (double Area, List<Run> Runs)> abreast;

    public Runs(GearSolution solution)
    {
        this.solution = solution;
        network = solution.Network;
        spots = [.. network.Nodes.Select(node => solution.CellAt(node.Index))];
        passes = [.. network.Links.Select(link => (Passes(link, link.A), Passes(link, link.B)))];
        together = new(2 * network.Links.Length);
        JoinTwins();
        foreach (var link in network.Links)
        {
            var (forth, back) = passes[link.Index];
            if (forth) Widen(link, link.A, link.B);
            if (back) Widen(link, link.B, link.A);
        }

        var all = Find();
        All = all;
        var between = new Dictionary<long, List<Run>>(all.Count);
        abreast = new(all.Count);
        foreach (var run in all)
        {
            if (!double.IsFinite(run.SquareMillimetres)) continue;
            if (!between.TryGetValue(KeyOf(run), out var beside)) between.Add(KeyOf(run), beside = []);
            beside.Add(run);
        }

        foreach (var (ends, beside) in between)
        {
            var disjoint = beside.Count == 1 ? beside : Disjoint(beside);
            abreast.Add(ends, (disjoint.Sum(run => run.SquareMillimetres), disjoint));
        }
    }

    /// <summary>Every run, in both directions where oil passes both.</summary>
    public IReadOnlyList<Run> All { get; }

    /// <summary>The area of a run together with those beside it, mm2; infinite where nothing restricts.</summary>
    public double WidthOf(Run run) =>
        double.IsInfinity(run.SquareMillimetres) ? double.PositiveInfinity : abreast[KeyOf(run)].Area;

    /// <summary>The openings that restrict a run and those beside it, joined with <c>+</c>.</summary>
    public string ElementsOf(Run run) =>
        string.Join('+', abreast[KeyOf(run)].Runs.SelectMany(other => ElementsAt(KeyOf(other.Narrowest))).Distinct());

    private static bool IsOpening(Node node) => node.Kind == NodeKind.Opening;

    private long KeyOf(Run run) => KeyOf(run.From, run.To);

    private long KeyOf(Step step) => KeyOf(step.From, step.To);

    private long KeyOf(int from, int to) => ((long)spots[from] << 32) | (uint)spots[to];

    /// <summary>What lies side by side between two spots.</summary>
    private IEnumerable<string> ElementsAt(long key)
    {
        foreach (var link in network.Links)
        {
            var (forth, back) = passes[link.Index];
            if ((forth && KeyOf(link.A, link.B) == key) || (back && KeyOf(link.B, link.A) == key)) yield return link.Element;
        }
    }

    /// <summary>
    /// Whether oil passes a link from one of its ends. While a chamber fills or empties, a check ball gives way to oil that
    /// comes from beyond its seat, and to none that comes from its pocket.
    /// </summary>
    private bool Passes(Link link, int from)
    {
        if (link.Gate.Kind == GateKind.Ball && network.Balls[link.Gate.Element].Seats.Length == 1) return from == link.B;
        return solution.IsOpen(link);
    }

    /// <summary>Openings that lie between the very same neighbours are one wider opening.</summary>
    private void JoinTwins()
    {
        var neighbours = new List<(int Cell, bool In, bool Out)>?[spots.Length];
        foreach (var link in network.Links)
        {
            var (forth, back) = passes[link.Index];
            if (!forth && !back) continue;
            Note(link.A, link.B, back, forth);
            Note(link.B, link.A, forth, back);
        }

        var first = new Dictionary<List<(int Cell, bool In, bool Out)>, int>(SameNeighbours.Instance);
        for (var node = 0; node < neighbours.Length; node++)
        {
            if (neighbours[node] is not { } around) continue;
            around.Sort();
            if (first.TryGetValue(around, out var twin)) spots[node] = solution.CellAt(twin);
            else first.Add(around, node);
        }

        void Note(int node, int other, bool goesIn, bool goesOut)
        {
            if (!IsOpening(network.Nodes[node])) return;
            var around = neighbours[node] ??= [];
            var neighbour = (solution.CellAt(other), goesIn, goesOut);
            if (!around.Contains(neighbour)) around.Add(neighbour);
        }
    }

    private void Widen(Link link, int from, int to) =>
        CollectionsMarshal.GetValueRefOrAddDefault(together, KeyOf(from, to), out _) += link.SquareMillimetres;

    private List<Run> Find()
    {
        var leaving = new List<Step>?[spots.Length];
        foreach (var link in network.Links)
        {
            var (forth, back) = passes[link.Index];
            if (forth) (leaving[link.A] ??= []).Add(new Step(link.A, link.B, link));
            if (back) (leaving[link.B] ??= []).Add(new Step(link.B, link.A, link));
        }

        var found = new List<Run>();
        var way = new List<Step>();
        foreach (var node in network.Nodes)
        {
            if (!IsOpening(node)) From(node.Index, leaving, way, found);
        }

        return found;
    }

    private void From(int node, List<Step>?[] leaving, List<Step> way, List<Run> found)
    {
        if (leaving[node] is not { } steps) return;
        foreach (var step in steps)
        {
            if (Crosses(way, spots[step.To])) continue;
            way.Add(step);
            if (IsOpening(network.Nodes[step.To])) From(step.To, leaving, way, found);
            else if (RunOf([.. way]) is { SquareMillimetres: > 0 } run) found.Add(run);
            way.RemoveAt(way.Count - 1);
        }
    }

    private bool Crosses(List<Step> way, int spot)
    {
        foreach (var earlier in way)
        {
            if (spots[earlier.From] == spot) return true;
        }

        return false;
    }

    private Run RunOf(ImmutableArray<Step> steps)
    {
        var resistance = 0.0;
        var narrowest = steps[0];
        foreach (var step in steps)
        {
            var area = AreaOf(step);
            resistance += 1 / (area * area);
            if (area < AreaOf(narrowest)) narrowest = step;
        }

        return new Run(steps, narrowest, resistance > 0 ? 1 / Math.Sqrt(resistance) : double.PositiveInfinity);
    }

    private double AreaOf(Step step) =>
        double.IsInfinity(step.Link.SquareMillimetres) ? double.PositiveInfinity : together[KeyOf(step)];

    /// <summary>The widest runs that share no opening with one another.</summary>
    private List<Run> Disjoint(List<Run> runs)
    {
        var kept = new List<Run>();
        var used = new HashSet<int>();
        foreach (var run in runs.OrderByDescending(run => run.SquareMillimetres))
        {
            // Links side by side are in one another's area already; -1 stands for them.
            var through = run.Steps.Length == 1 ? [-1] : run.Steps.Skip(1).Select(step => spots[step.From]).ToArray();
            if (through.Any(used.Contains)) continue;
            used.UnionWith(through);
            kept.Add(run);
        }

        return kept;
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

/// <summary>A way from one passage to another without a third between.</summary>
/// <param name="Steps">Its steps; those between the first and the last lie at openings.</param>
/// <param name="Narrowest">The step that restricts it most.</param>
/// <param name="SquareMillimetres">The area of the one hole that passes as much; infinite where nothing restricts.</param>
internal sealed record Run(ImmutableArray<Step> Steps, Step Narrowest, double SquareMillimetres)
{
    /// <summary>The node it leaves.</summary>
    public int From => Steps[0].From;

    /// <summary>The node it enters.</summary>
    public int To => Steps[^1].To;
}
