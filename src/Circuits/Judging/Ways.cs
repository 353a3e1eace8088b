using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// The widest ways of oil in a gear: from its sources to every node, and from every node to sump. Parallel links between
/// the same two cells count as one opening with the sum of their areas.
/// </summary>
internal sealed class Ways
{
    private const double Level = 1e-3;
    private readonly GearSolution solution;
    private readonly Dictionary<(int, int), double> together = [];
    private readonly List<Func<int, IReadOnlyList<Step>?>> supplies = [];
    private readonly Func<int, IReadOnlyList<Step>?> sump;

    public Ways(GearSolution solution)
    {
        this.solution = solution;
        foreach (var link in solution.Network.Links)
        {
            if (!solution.IsOpen(link)) continue;
            together[Key(link)] = together.GetValueOrDefault(Key(link)) + link.SquareMillimetres;
        }

        foreach (var source in Sources()) supplies.Add(OilGraph.Widest(solution.Network, source, Downhill));
        sump = OilGraph.Widest(solution.Network, 0, TowardsSump);
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

    /// <summary>The widest way from a source to a node, or null when none reaches it.</summary>
    public IReadOnlyList<Step>? Supply(int node) => supplies.Select(ways => ways(node)).FirstOrDefault(way => way is not null);

    /// <summary>The widest way from a node to sump, or null when it has none.</summary>
    public IReadOnlyList<Step>? ToSump(int node)
    {
        var way = sump(node);
        return way is null ? null : [.. way.Reverse().Select(step => new Step(step.To, step.From, step.Link))];
    }

    /// <summary>The narrowest opening on a way; null when nothing on it restricts.</summary>
    public Control? Narrowest(IReadOnlyList<Step>? way)
    {
        Control? narrowest = null;
        foreach (var step in way ?? [])
        {
            var area = WidthOf(step.Link);
            if (double.IsInfinity(area) || area >= (narrowest?.SquareMillimetres ?? double.PositiveInfinity)) continue;
            narrowest = new Control(ElementOf(step.Link), area, IsPort(step.Link.Kind), step.Link.Place);
        }

        return narrowest;
    }

    private static bool IsPort(LinkKind kind) =>
        kind is LinkKind.ValvePort or LinkKind.LeverPort or LinkKind.SolenoidPort or LinkKind.RegulatorPort;

    private string ElementOf(Link link)
    {
        var parallel = solution.Network.Links
            .Where(other => Key(other) == Key(link) && solution.IsOpen(other)).Select(other => other.Element).Distinct();
        return string.Join('+', parallel);
    }

    private double WidthOf(Link link) =>
        double.IsInfinity(link.SquareMillimetres) ? double.PositiveInfinity : together[Key(link)];

    private double Downhill(Link link, int from, int to)
    {
        if (!solution.IsOpen(link) || to == 0) return 0;
        return solution.PressureAt(from) >= solution.PressureAt(to) - Level ? WidthOf(link) : 0;
    }

    /// <summary>Searched from sump outward, through oil that has no supply.</summary>
    private double TowardsSump(Link link, int from, int to) =>
        solution.IsOpen(link) && solution.OilAt(to) == OilState.Exhaust ? WidthOf(link) : 0;

    private (int, int) Key(Link link)
    {
        var (a, b) = (solution.CellAt(link.A), solution.CellAt(link.B));
        return a < b ? (a, b) : (b, a);
    }
}
