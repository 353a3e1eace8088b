using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// The widest ways of oil in a gear: from its sources to every passage, and from every passage to sump. Holds work arrays;
/// what it says of a gear is overwritten when it looks at the next.
/// </summary>
internal sealed class Ways
{
    private const double Level = 1e-3;
    private readonly Runs runs = new();

    /// <summary>The ways from each source, as many of them as the gear has sources; the rest is kept for gears that have more.</summary>
    private readonly List<WidestWays> supplies = [];
    private int sources;

    private readonly WidestWays sump = new();
    private Piece[] supplying = [];
    private Piece[] draining = [];

    /// <summary>Looks at a gear.</summary>
    /// <param name="solution">The gear's state.</param>
    /// <returns>Itself.</returns>
    public Ways Of(GearSolution solution)
    {
        runs.Find(solution);
        var all = runs.All;
        var supplying = WorkArray.Of(ref this.supplying, all.Length);
        var draining = WorkArray.Of(ref this.draining, all.Length);
        var (supplyingCount, drainingCount) = (0, 0);
        for (var i = 0; i < all.Length; i++)
        {
            ref readonly var run = ref all[i];
            if (!IsDownhill(solution, run)) continue;
            if (run.To != 0) supplying[supplyingCount++] = new Piece(i, run.From, run.To, run.Width);
            // Searched from sump outward, against the oil.
            if (!LeavesSource(solution, run)) draining[drainingCount++] = new Piece(i, run.To, run.From, run.Width);
        }

        var nodes = solution.Network.Nodes.Length;
        sources = 0;
        if (solution.Network.Pump > 0) SupplyFrom(solution.Network.Pump, nodes, supplying[..supplyingCount]);
        foreach (var (node, kilopascals) in solution.Inputs.Fixed)
        {
            if (kilopascals > 0 && node > 0) SupplyFrom(node, nodes, supplying[..supplyingCount]);
        }

        // A shared exhaust may be kept full under a little pressure, so the way need not be without any; it must only run
        // downhill, and no source lies on it.
        sump.Search(nodes, 0, draining[..drainingCount]);
        return this;
    }

    /// <summary>The widest way from a source to a passage, or null when none reaches it.</summary>
    public IReadOnlyList<Step>? Supply(int node)
    {
        if (SupplyOf(node) is not { } ways) return null;
        var steps = new List<Step>();
        for (var at = node; ways.Into(at) is { } piece; at = piece.From)
        {
            // From the passage backward.
            steps.InsertRange(0, runs.StepsOf(runs.All[piece.Number]));
        }

        return steps;
    }

    /// <summary>The widest way from a passage to sump, or null when it has none.</summary>
    public IReadOnlyList<Step>? ToSump(int node)
    {
        if (!sump.Reaches(node)) return null;
        var steps = new List<Step>();
        for (var at = node; sump.Into(at) is { } piece; at = piece.From) steps.AddRange(runs.StepsOf(runs.All[piece.Number]));
        return steps;
    }

    /// <summary>The narrowest opening on the way from a source to a passage; null when nothing on it restricts or there is none.</summary>
    public Control? SupplyControl(int node)
    {
        if (SupplyOf(node) is not { } ways) return null;
        var narrowest = -1;
        for (var at = node; ways.Into(at) is { } piece; at = piece.From)
        {
            // Of several alike, the one nearest to the source.
            if (narrowest < 0 || piece.Width <= runs.All[narrowest].Width) narrowest = piece.Number;
        }

        return ControlBy(narrowest);
    }

    /// <summary>The narrowest opening on the way from a passage to sump; null when nothing on it restricts or there is none.</summary>
    public Control? SumpControl(int node)
    {
        if (!sump.Reaches(node)) return null;
        var narrowest = -1;
        for (var at = node; sump.Into(at) is { } piece; at = piece.From)
        {
            // Of several alike, the one nearest to the passage.
            if (narrowest < 0 || piece.Width < runs.All[narrowest].Width) narrowest = piece.Number;
        }

        return ControlBy(narrowest);
    }

    private void SupplyFrom(int source, int nodes, ReadOnlySpan<Piece> pieces)
    {
        if (supplies.Count == sources) supplies.Add(new WidestWays());
        supplies[sources++].Search(nodes, source, pieces);
    }

    private WidestWays? SupplyOf(int node)
    {
        for (var source = 0; source < sources; source++)
        {
            if (supplies[source].Reaches(node)) return supplies[source];
        }

        return null;
    }

    private Control? ControlBy(int narrowest)
    {
        if (narrowest < 0) return null;
        ref readonly var run = ref runs.All[narrowest];
        if (double.IsInfinity(run.Width)) return null;
        var link = runs.NarrowestOf(run).Link;
        return new Control(runs.ElementsOf(run), run.Width, IsPort(link.Kind), link.Place);
    }

    private static bool IsPort(LinkKind kind) =>
        kind is LinkKind.ValvePort or LinkKind.LeverPort or LinkKind.SolenoidPort or LinkKind.RegulatorPort;

    private bool IsDownhill(GearSolution solution, in Run run)
    {
        foreach (var step in runs.StepsOf(run))
        {
            if (solution.PressureAt(step.From) < solution.PressureAt(step.To) - Level) return false;
        }

        return true;
    }

    private bool LeavesSource(GearSolution solution, in Run run)
    {
        foreach (var step in runs.StepsOf(run))
        {
            if (solution.IsSource(step.From)) return true;
        }

        return false;
    }
}
