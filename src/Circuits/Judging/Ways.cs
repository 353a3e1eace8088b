using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>The widest ways of oil in a gear: from its sources to every passage, and from every passage to sump.</summary>
internal sealed class Ways
{
    private const double Level = 1e-3;
    private readonly GearSolution solution;
    private readonly Runs runs;
    private readonly List<Func<int, IReadOnlyList<Run>?>> supplies = [];
    private readonly Func<int, IReadOnlyList<Run>?> sump;

    public Ways(GearSolution solution)
    {
        this.solution = solution;
        runs = new Runs(solution);
        var nodes = solution.Network.Nodes.Length;
        var supplying = new List<Run>();
        var draining = new List<Run>();
        foreach (var run in runs.All)
        {
            if (!IsDownhill(run)) continue;
            if (run.To != 0) supplying.Add(run);
            if (!LeavesSource(run)) draining.Add(run);
        }

        foreach (var source in Sources())
            supplies.Add(OilGraph.Widest(nodes, source, supplying, run => (run.From, run.To), run => run.Width));
        // Searched from sump outward, against the oil. A shared exhaust may be kept full under a little pressure, so the way
        // need not be without any; it must only run downhill, and no source lies on it.
        sump = OilGraph.Widest(nodes, 0, draining, run => (run.To, run.From), run => run.Width);
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

    private IReadOnlyList<Run>? SupplyRuns(int node) => supplies.Select(ways => ways(node)).FirstOrDefault(way => way is not null);

    private IReadOnlyList<Run>? SumpRuns(int node) => sump(node) is { } way ? [.. way.Reverse()] : null;

    private static IReadOnlyList<Step>? Steps(IReadOnlyList<Run>? way) => way is null ? null : [.. way.SelectMany(run => run.Steps)];

    private Control? Narrowest(IReadOnlyList<Run>? way)
    {
        var narrowest = way?.MinBy(run => run.Width);
        if (narrowest is null || double.IsInfinity(narrowest.Width)) return null;
        var link = narrowest.Narrowest.Link;
        return new Control(runs.ElementsOf(narrowest), narrowest.Width, IsPort(link.Kind), link.Place);
    }

    private static bool IsPort(LinkKind kind) =>
        kind is LinkKind.ValvePort or LinkKind.LeverPort or LinkKind.SolenoidPort or LinkKind.RegulatorPort;

    private bool IsDownhill(Run run)
    {
        foreach (var step in run.Steps)
        {
            if (solution.PressureAt(step.From) < solution.PressureAt(step.To) - Level) return false;
        }

        return true;
    }

    private bool LeavesSource(Run run)
    {
        foreach (var step in run.Steps)
        {
            if (solution.IsSource(step.From)) return true;
        }

        return false;
    }
}
