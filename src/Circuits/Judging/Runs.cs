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
    /// <summary>Pressures closer than this, kPa, are level.</summary>
    private const double Level = 1e-3;

    /// <summary>Stands for links side by side, which are in one another's area already.</summary>
    private const int NoOpening = -1;

    private readonly GearSolution solution;
    private readonly Network network;
    private readonly int[] spots;
    private readonly Leaving leaving;
    private readonly List<Run> found;

    /// <summary>The steps of all runs, one run after the other.</summary>
    private readonly List<Step> steps;

    /// <summary>Runs side by side that share no opening, for those that have others beside them.</summary>
    private readonly List<List<int>> abreast = [];

    private readonly List<Step> way = [];

    public Runs(GearSolution solution)
    {
        this.solution = solution;
        network = solution.Network;
        spots = new int[network.Nodes.Length];
        for (var node = 0; node < spots.Length; node++) spots[node] = solution.CellAt(node);
        leaving = new Leaving(solution, spots);
        found = new List<Run>(network.Links.Length);
        steps = new List<Step>(2 * network.Links.Length);

        // Oil never comes back from sump.
        for (var node = 1; node < spots.Length; node++)
        {
            if (!IsOpening(node)) From(node, node);
        }

        Widen();
    }

    /// <summary>Every run whose end is no higher than its start, by pressure; in both directions where oil passes both.</summary>
    public ReadOnlySpan<Run> All => CollectionsMarshal.AsSpan(found);

    /// <summary>A run's steps; those between the first and the last lie at openings.</summary>
    public ReadOnlySpan<Step> StepsOf(in Run run) => CollectionsMarshal.AsSpan(steps).Slice(run.First, run.Count);

    /// <summary>The step that restricts a run most.</summary>
    public Step NarrowestOf(in Run run) => steps[run.Narrowest];

    /// <summary>The openings that restrict a run and those beside it, joined with <c>+</c>.</summary>
    /// <param name="run">The run's number.</param>
    public string ElementsOf(int run) =>
        string.Join('+', (found[run].Abreast < 0 ? [run] : abreast[found[run].Abreast]).SelectMany(other => leaving.ElementsAlong(steps[found[other].Narrowest])).Distinct());

    private bool IsOpening(int node) => network.Nodes[node].Kind == NodeKind.Opening;

    private void From(int start, int node)
    {
        for (var edge = leaving.First(node); edge >= 0; edge = leaving.Next(edge))
        {
            var step = leaving.StepOf(edge);
            if (Crosses(spots[step.To])) continue;
            way.Add(step);
            if (IsOpening(step.To)) From(start, step.To);
            else if (solution.PressureAt(start) >= solution.PressureAt(step.To) - Level) AddRun();
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

    private void AddRun()
    {
        var resistance = 0.0;
        var (narrowest, narrowestArea) = (0, leaving.AreaOf(way[0]));
        for (var i = 0; i < way.Count; i++)
        {
            var area = leaving.AreaOf(way[i]);
            resistance += 1 / (area * area);
            if (area < narrowestArea) (narrowest, narrowestArea) = (i, area);
        }

        var together = resistance > 0 ? 1 / Math.Sqrt(resistance) : double.PositiveInfinity;
        if (!(together > 0)) return;
        found.Add(new Run
        {
            First = steps.Count,
            Count = way.Count,
            Narrowest = steps.Count + narrowest,
            From = way[0].From,
            To = way[^1].To,
            SquareMillimetres = together,
            Width = double.PositiveInfinity,
            Abreast = -1,
        });
        steps.AddRange(way);
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
        var one = new int[spots.Length];
        Array.Fill(one, -1);
        var several = new List<int>?[spots.Length];
        var runs = CollectionsMarshal.AsSpan(found);
        foreach (var head in first)
        {
            for (var i = head; i >= 0; i = next[i])
            {
                var to = spots[runs[i].To];
                runs[i].Width = runs[i].SquareMillimetres;
                if (one[to] >= 0) (several[to] ??= [one[to]]).Add(i);
                else one[to] = i;
            }

            for (var i = head; i >= 0; i = next[i])
            {
                var to = spots[runs[i].To];
                if (several[to] is { } beside) Join(runs, beside);
                (one[to], several[to]) = (-1, null);
            }
        }
    }

    private void Join(Span<Run> runs, List<int> beside)
    {
        var disjoint = Disjoint(beside);
        abreast.Add(disjoint);
        var width = 0.0;
        foreach (var run in disjoint) width += runs[run].SquareMillimetres;
        foreach (var run in beside) (runs[run].Width, runs[run].Abreast) = (width, abreast.Count - 1);
    }

    /// <summary>The widest runs that share no opening with one another.</summary>
    private List<int> Disjoint(List<int> runs)
    {
        var kept = new List<int>(runs.Count);
        var used = new List<int>();
        foreach (var run in runs.OrderByDescending(run => found[run].SquareMillimetres))
        {
            var through = StepsOf(found[run])[1..];
            if (through.IsEmpty ? used.Contains(NoOpening) : SharesAny(through, used)) continue;
            if (through.IsEmpty) used.Add(NoOpening);
            foreach (var step in through) used.Add(spots[step.From]);
            kept.Add(run);
        }

        return kept;
    }

    private bool SharesAny(ReadOnlySpan<Step> through, List<int> used)
    {
        foreach (var step in through)
        {
            if (used.Contains(spots[step.From])) return true;
        }

        return false;
    }
}

/// <summary>A way from one passage to another without a third between. Its steps stand with those of all others.</summary>
internal struct Run
{
    /// <summary>The first of its steps, and how many there are.</summary>
    public int First;

    /// <inheritdoc cref="First"/>
    public int Count;

    /// <summary>The step that restricts it most.</summary>
    public int Narrowest;

    /// <summary>The node it leaves.</summary>
    public int From;

    /// <summary>The node it enters.</summary>
    public int To;

    /// <summary>The area of the one hole that passes as much, mm2; infinite where nothing restricts.</summary>
    public double SquareMillimetres;

    /// <summary>Its area together with those beside it, mm2; infinite where nothing restricts.</summary>
    public double Width;

    /// <summary>The number of the runs that its width counts, where others lie beside it; else -1.</summary>
    public int Abreast;
}
