using System.Collections.Immutable;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What oil passes between two passages without meeting a third: one link, or several in series through openings. Runs
/// side by side between the same two cells count as one opening with the sum of their areas.
/// </summary>
internal sealed class Runs
{
    /// <summary>Pressures closer than this, kPa, are level.</summary>
    private const double Level = 1e-3;

    private readonly GearSolution solution;
    private readonly Network network;
    private readonly int[] spots;
    private readonly Leaving leaving;
    private readonly List<Run> found;
    private readonly List<Step> way = [];

    public Runs(GearSolution solution)
    {
        this.solution = solution;
        network = solution.Network;
        spots = new int[network.Nodes.Length];
        for (var node = 0; node < spots.Length; node++) spots[node] = solution.CellAt(node);
        leaving = new Leaving(solution, spots);
        found = new List<Run>(network.Links.Length);

        // Oil never comes back from sump.
        for (var node = 1; node < spots.Length; node++)
        {
            if (!IsOpening(node)) From(node, node);
        }

        Widen();
    }

    /// <summary>Every run whose end is no higher than its start, by pressure; in both directions where oil passes both.</summary>
    public IReadOnlyList<Run> All => found;

    /// <summary>The openings that restrict a run and those beside it, joined with <c>+</c>.</summary>
    public string ElementsOf(Run run) =>
        string.Join('+', (run.Abreast ?? [run]).SelectMany(other => leaving.ElementsAlong(other.Narrowest)).Distinct());

    private bool IsOpening(int node) => network.Nodes[node].Kind == NodeKind.Opening;

    private void From(int start, int node)
    {
        for (var edge = leaving.First(node); edge >= 0; edge = leaving.Next(edge))
        {
            var step = leaving.StepOf(edge);
            if (Crosses(spots[step.To])) continue;
            way.Add(step);
            if (IsOpening(step.To)) From(start, step.To);
            else if (solution.PressureAt(start) >= solution.PressureAt(step.To) - Level && RunOf() is { SquareMillimetres: > 0 } run) found.Add(run);
            way.RemoveAt(way.Count - 1);
        }
    }

    private bool Crosses(int spot)
    {
        foreach (var earlier in way)
        {
            if (spots[earlier.From] == spot) return true;
        }

        return false;
    }

    private Run RunOf()
    {
        var resistance = 0.0;
        var narrowest = way[0];
        var narrowestArea = leaving.AreaOf(narrowest);
        foreach (var step in way)
        {
            var area = leaving.AreaOf(step);
            resistance += 1 / (area * area);
            if (area < narrowestArea) (narrowest, narrowestArea) = (step, area);
        }

        return new Run([.. way], narrowest, resistance > 0 ? 1 / Math.Sqrt(resistance) : double.PositiveInfinity);
    }

    /// <summary>Gives each run the area that it has together with those beside it.</summary>
    private void Widen()
    {
        var first = new Dictionary<long, Run>(found.Count);
        Dictionary<Run, List<Run>>? several = null;
        foreach (var run in found)
        {
            if (!double.IsFinite(run.SquareMillimetres)) continue;
            run.Width = run.SquareMillimetres;
            var ends = ((long)spots[run.From] << 32) | (uint)spots[run.To];
            if (first.TryAdd(ends, run)) continue;
            var one = first[ends];
            several ??= [];
            if (!several.TryGetValue(one, out var beside)) several.Add(one, beside = [one]);
            beside.Add(run);
        }

        if (several is null) return;
        foreach (var beside in several.Values)
        {
            var disjoint = Disjoint(beside);
            var width = 0.0;
            foreach (var run in disjoint) width += run.SquareMillimetres;
            foreach (var run in beside) (run.Width, run.Abreast) = (width, disjoint);
        }
    }

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

/// <summary>A way from one passage to another without a third between.</summary>
/// <param name="steps">Its steps; those between the first and the last lie at openings.</param>
/// <param name="narrowest">The step that restricts it most.</param>
/// <param name="area">The area of the one hole that passes as much, mm2; infinite where nothing restricts.</param>
internal sealed class Run(ImmutableArray<Step> steps, Step narrowest, double area)
{
    public ImmutableArray<Step> Steps { get; } = steps;

    public Step Narrowest { get; } = narrowest;

    public double SquareMillimetres { get; } = area;

    /// <summary>The node it leaves.</summary>
    public int From { get; } = steps[0].From;

    /// <summary>The node it enters.</summary>
    public int To { get; } = steps[^1].To;

    /// <summary>Its area together with those beside it, mm2; infinite where nothing restricts.</summary>
    public double Width { get; set; } = double.PositiveInfinity;

    /// <summary>The runs that its width counts, where others lie beside it; they share no opening.</summary>
    public IReadOnlyList<Run>? Abreast { get; set; }
}
