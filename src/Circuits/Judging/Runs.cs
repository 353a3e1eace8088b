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

    /// <summary>Stands for links side by side, which are in one another's area already.</summary>
    private const int NoOpening = -1;

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
        // Runs by the cell they leave, in the order they were found.
        var first = new int[spots.Length];
        Array.Fill(first, -1);
        var next = new int[found.Count];
        for (var i = found.Count - 1; i >= 0; i--)
        {
            if (!double.IsFinite(found[i].SquareMillimetres)) continue;
            var from = spots[found[i].From];
            (next[i], first[from]) = (first[from], i);
        }

        // For each cell that is entered, the first run into it, and all of them where there are several.
        var one = new Run?[spots.Length];
        var several = new List<Run>?[spots.Length];
        foreach (var head in first)
        {
            for (var i = head; i >= 0; i = next[i])
            {
                var (run, to) = (found[i], spots[found[i].To]);
                run.Width = run.SquareMillimetres;
                if (one[to] is { } beside) (several[to] ??= [beside]).Add(run);
                else one[to] = run;
            }

            for (var i = head; i >= 0; i = next[i])
            {
                var to = spots[found[i].To];
                if (several[to] is { } beside) Join(beside);
                (one[to], several[to]) = (null, null);
            }
        }
    }

    private void Join(List<Run> beside)
    {
        var disjoint = Disjoint(beside);
        var width = 0.0;
        foreach (var run in disjoint) width += run.SquareMillimetres;
        foreach (var run in beside) (run.Width, run.Abreast) = (width, disjoint);
    }

    /// <summary>The widest runs that share no opening with one another.</summary>
    private List<Run> Disjoint(List<Run> runs)
    {
        var kept = new List<Run>(runs.Count);
        var used = new List<int>();
        foreach (var run in runs.OrderByDescending(run => run.SquareMillimetres))
        {
            if (SharesAny(run, used)) continue;
            if (run.Steps.Length == 1) used.Add(NoOpening);
            for (var i = 1; i < run.Steps.Length; i++) used.Add(spots[run.Steps[i].From]);
            kept.Add(run);
        }

        return kept;
    }

    private bool SharesAny(Run run, List<int> used)
    {
        if (run.Steps.Length == 1) return used.Contains(NoOpening);
        for (var i = 1; i < run.Steps.Length; i++)
        {
            if (used.Contains(spots[run.Steps[i].From])) return true;
        }

        return false;
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
