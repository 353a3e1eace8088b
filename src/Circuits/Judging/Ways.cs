using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>The widest ways of oil in a gear: from its sources to every passage, and from every passage to sump.</summary>
internal sealed class Ways
{
    private const double Level = 1e-3;
    private readonly GearSolution solution;
    private readonly Runs runs;
    private readonly List<Func<int, IReadOnlyList<int>?>> supplies = [];
    private readonly Func<int, IReadOnlyList<int>?> sump;

    public Ways(GearSolution solution)
    {
        this.solution = solution;
        runs = new Runs(solution);
        var nodes = solution.Network.Nodes.Length;
        var supplying = new List<int>(runs.All.Length);
        var draining = new List<int>(runs.All.Length);
        for (var i = 0; i < runs.All.Length; i++)
        {
            ref readonly var run = ref runs.All[i];
            if (!IsDownhill(run)) continue;
            if (run.To != 0) supplying.Add(i);
            if (!LeavesSource(run)) draining.Add(i);
        }

        foreach (var source in Sources())
            supplies.Add(OilGraph.Widest(nodes, source, supplying, run => (runs.All[run].From, runs.All[run].To), run => runs.All[run].Width));
        // Searched from sump outward, against the oil. A shared exhaust may be kept full under a little pressure, so the way
        // need not be without any; it must only run downhill, and no source lies on it.
        sump = OilGraph.Widest(nodes, 0, draining, run => (runs.All[run].To, runs.All[run].From), run => runs.All[run].Width);
    }

    /// <summary>The nodes that oil comes from: the pump's passage and passages under pressure from outside.</summary>
    private IEnumerable<int> Sources()
    {
        if (solution.Network.Pump > 0) yield return solution.Network.Pump;
        foreach (var (node, kilopascals) in solution.Inputs.Fixed)
        {
            if (kilopascals > 0 && node > 0) yield return node;
        }
    }

    /// <summary>The widest way from a source to a passage, or null when none reaches it.</summary>
    public IReadOnlyList<Step>? Supply(int node) => Steps(SupplyRuns(node));

    /// <summary>The widest way from a passage to sump, or null when it has none.</summary>
    public IReadOnlyList<Step>? ToSump(int node) => Steps(SumpRuns(node));

    /// <summary>The narrowest opening on the way from a source to a passage; null when nothing on it restricts or there is none.</summary>
    public Control? SupplyControl(int node) => Narrowest(SupplyRuns(node));

    /// <summary>The narrowest opening on the way from a passage to sump; null when nothing on it restricts or there is none.</summary>
    public Control? SumpControl(int node) => Narrowest(SumpRuns(node));

    private IReadOnlyList<int>? SupplyRuns(int node) => supplies.Select(ways => ways(node)).FirstOrDefault(way => way is not null);

    private IReadOnlyList<int>? SumpRuns(int node) => sump(node) is { } way ? [.. way.Reverse()] : null;

    private IReadOnlyList<Step>? Steps(IReadOnlyList<int>? way) => way is null ? null : [.. way.SelectMany(run => runs.StepsOf(runs.All[run]).ToArray())];

    private Control? Narrowest(IReadOnlyList<int>? way)
    {
        if (way is not { Count: > 0 }) return null;
        var narrowest = way.MinBy(run => runs.All[run].Width);
        var width = runs.All[narrowest].Width;
        if (double.IsInfinity(width)) return null;
        var link = runs.NarrowestOf(runs.All[narrowest]).Link;
        return new Control(runs.ElementsOf(narrowest), width, IsPort(link.Kind), link.Place);
    }

    private static bool IsPort(LinkKind kind) =>
        kind is LinkKind.ValvePort or LinkKind.LeverPort or LinkKind.SolenoidPort or LinkKind.RegulatorPort;

    private bool IsDownhill(in Run run)
    {
        foreach (var step in runs.StepsOf(run))
        {
            if (solution.PressureAt(step.From) < solution.PressureAt(step.To) - Level) return false;
        }

        return true;
    }

    private bool LeavesSource(in Run run)
    {
        foreach (var step in runs.StepsOf(run))
        {
            if (solution.IsSource(step.From)) return true;
        }

        return false;
    }
}
