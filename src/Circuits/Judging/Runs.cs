using System.Runtime.InteropServices;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What oil passes between two passages without meeting a third: one link, or several in series through openings. Runs
/// side by side between the same two cells count as one opening with the sum of their areas. Holds work arrays; what it
/// says of a gear is overwritten when it looks at the next.
/// </summary>
internal sealed class Runs
{
    /// <summary>Pressures closer than this, kPa, are level.</summary>
    private const double Level = 1e-3;

    /// <summary>Stands for links side by side, which are in one another's area already.</summary>
    private const int NoOpening = -1;

    private readonly Leaving leaving = new();
    private readonly List<Run> found = [];

    /// <summary>The steps of all runs, one run after the other.</summary>
    private readonly List<Step> steps = [];

    /// <summary>Runs side by side that share no opening, for those that have others beside them, one lot after the other.</summary>
    private readonly List<int> abreast = [];

    private readonly List<Step> way = [];
    private readonly List<int> beside = [];
    private readonly List<int> used = [];
    private int[] spots = [];
    private int[] firstFrom = [];
    private int[] nextFrom = [];
    private int[] firstInto = [];
    private int[] lastInto = [];
    private int[] nextInto = [];

    /// <summary>Finds the runs of a gear.</summary>
    /// <param name="solution">The gear's state.</param>
    public void Find(GearSolution solution)
    {
        var nodes = solution.Network.Nodes;
        var spots = WorkArray.Of(ref this.spots, nodes.Length);
        for (var node = 0; node < spots.Length; node++) spots[node] = solution.CellAt(node);
        leaving.Find(solution, this.spots);
        found.Clear();
        steps.Clear();
        abreast.Clear();

        // Oil never comes back from sump.
        for (var node = 1; node < spots.Length; node++)
        {
            if (!IsOpening(solution, node)) From(solution, node, node);
        }

        Widen(spots.Length);
    }

    /// <summary>Every run whose end is no higher than its start, by pressure; in both directions where oil passes both.</summary>
    public ReadOnlySpan<Run> All => CollectionsMarshal.AsSpan(found);

    /// <summary>A run's steps; those between the first and the last lie at openings.</summary>
    public ReadOnlySpan<Step> StepsOf(in Run run) => CollectionsMarshal.AsSpan(steps).Slice(run.First, run.Count);

    /// <summary>The step that restricts a run most.</summary>
    public Step NarrowestOf(in Run run) => steps[run.Narrowest];

    /// <summary>The openings that restrict a run and those beside it, joined with <c>+</c>.</summary>
    public string ElementsOf(in Run run)
    {
        var elements = new List<string>();
        if (run.AbreastCount == 0) leaving.AddElementsAlong(NarrowestOf(run), elements);
        for (var i = run.AbreastFirst; i < run.AbreastFirst + run.AbreastCount; i++) leaving.AddElementsAlong(NarrowestOf(found[abreast[i]]), elements);
        return elements is [var only] ? only : string.Join('+', elements);
    }

    private static bool IsOpening(GearSolution solution, int node) => solution.Network.Nodes[node].Kind == NodeKind.Opening;

    private void From(GearSolution solution, int start, int node)
    {
        for (var edge = leaving.First(node); edge >= 0; edge = leaving.Next(edge))
        {
            var step = leaving.StepOf(edge);
            if (Crosses(spots[step.To])) continue;
            way.Add(step);
            if (IsOpening(solution, step.To)) From(solution, start, step.To);
            else if (solution.PressureAt(start) >= solution.PressureAt(step.To) - Level) AddRun();
            way.RemoveAt(way.Count - 1);
        }
    }

    private bool Crosses(int spot)
    {
        foreach (ref readonly var earlier in CollectionsMarshal.AsSpan(way))
        {
            if (spots[earlier.From] == spot) return true;
        }

        return false;
    }

    private void AddRun()
    {
        var way = CollectionsMarshal.AsSpan(this.way);
        var resistance = 0.0;
        var (narrowest, narrowestArea) = (0, leaving.AreaOf(way[0]));
        for (var i = 0; i < way.Length; i++)
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
            Count = way.Length,
            Narrowest = steps.Count + narrowest,
            From = way[0].From,
            To = way[^1].To,
            SquareMillimetres = together,
            Width = double.PositiveInfinity,
        });
        steps.AddRange(way);
    }

    /// <summary>Gives each run the area that it has together with those beside it.</summary>
    private void Widen(int nodes)
    {
        // Runs by the cell they leave, in the order they were found.
        var runs = CollectionsMarshal.AsSpan(found);
        var firstFrom = WorkArray.Filled(ref this.firstFrom, nodes, -1);
        var nextFrom = WorkArray.Of(ref this.nextFrom, runs.Length);
        for (var i = runs.Length - 1; i >= 0; i--)
        {
            if (!double.IsFinite(runs[i].SquareMillimetres)) continue;
            var from = spots[runs[i].From];
            (nextFrom[i], firstFrom[from]) = (firstFrom[from], i);
        }

        // Of those that leave one cell, runs by the cell they enter.
        var firstInto = WorkArray.Filled(ref this.firstInto, nodes, -1);
        var lastInto = WorkArray.Of(ref this.lastInto, nodes);
        var nextInto = WorkArray.Of(ref this.nextInto, runs.Length);
        foreach (var head in firstFrom)
        {
            for (var i = head; i >= 0; i = nextFrom[i])
            {
                var to = spots[runs[i].To];
                runs[i].Width = runs[i].SquareMillimetres;
                nextInto[i] = -1;
                if (firstInto[to] >= 0) nextInto[lastInto[to]] = i;
                else firstInto[to] = i;
                lastInto[to] = i;
            }

            for (var i = head; i >= 0; i = nextFrom[i])
            {
                var to = spots[runs[i].To];
                if (firstInto[to] < 0) continue;
                beside.Clear();
                for (var k = firstInto[to]; k >= 0; k = nextInto[k]) beside.Add(k);
                if (beside.Count > 1) Join(runs);
                firstInto[to] = -1;
            }
        }
    }

    /// <summary>Lets the runs that lie beside one another be as wide as the widest of them together that share no opening.</summary>
    private void Join(Span<Run> runs)
    {
        WidestFirst(runs, CollectionsMarshal.AsSpan(beside));
        var (first, width) = (abreast.Count, 0.0);
        used.Clear();
        foreach (var run in beside)
        {
            var through = StepsOf(runs[run])[1..];
            if (through.IsEmpty ? used.Contains(NoOpening) : SharesAny(through)) continue;
            if (through.IsEmpty) used.Add(NoOpening);
            foreach (var step in through) used.Add(spots[step.From]);
            abreast.Add(run);
            width += runs[run].SquareMillimetres;
        }

        foreach (var run in beside) (runs[run].Width, runs[run].AbreastFirst, runs[run].AbreastCount) = (width, first, abreast.Count - first);
    }

    /// <summary>Sorts runs by area; those of one area stay as they were found. Few lie beside one another.</summary>
    private static void WidestFirst(ReadOnlySpan<Run> runs, Span<int> numbers)
    {
        for (var i = 1; i < numbers.Length; i++)
        {
            var (run, at) = (numbers[i], i);
            for (; at > 0 && runs[numbers[at - 1]].SquareMillimetres < runs[run].SquareMillimetres; at--) numbers[at] = numbers[at - 1];
            numbers[at] = run;
        }
    }

    private bool SharesAny(ReadOnlySpan<Step> through)
    {
        foreach (ref readonly var step in through)
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

    /// <summary>The first of the runs that its width counts, and how many there are: none where no others lie beside it.</summary>
    public int AbreastFirst;

    /// <inheritdoc cref="AbreastFirst"/>
    public int AbreastCount;
}
