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
            Widen(link, link.A, link.B);
            Widen(link, link.B, link.A);
        }

        foreach (var source in Sources()) supplies.Add(OilGraph.Widest(solution.Network, source, Downhill));
        sump = OilGraph.Widest(solution.Network, 0, TowardsSump);
    }

    private void Widen(Link link, int from, int to)
    {
        if (!Passes(link, from)) return;
        var key = (solution.CellAt(from), solution.CellAt(to));
        together[key] = together.GetValueOrDefault(key) + link.SquareMillimetres;
    }

    /// <summary>
    /// Whether oil passes a link from one of its ends. While a chamber fills or empties, a check ball gives way to oil that
    /// comes from beyond its seat, and to none that comes from its pocket.
    /// </summary>
    private bool Passes(Link link, int from)
    {
        if (link.Gate.Kind == GateKind.Ball && solution.Network.Balls[link.Gate.Element].Seats.Length == 1) return from == link.B;
        return solution.IsOpen(link);
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
            var area = WidthOf(step.Link, step.From, step.To);
            if (double.IsInfinity(area) || area >= (narrowest?.SquareMillimetres ?? double.PositiveInfinity)) continue;
            narrowest = new Control(ElementOf(step), area, IsPort(step.Link.Kind), step.Link.Place);
        }

        return narrowest;
    }

    private static bool IsPort(LinkKind kind) =>
        kind is LinkKind.ValvePort or LinkKind.LeverPort or LinkKind.SolenoidPort or LinkKind.RegulatorPort;

    private string ElementOf(Step step)
    {
        var key = (solution.CellAt(step.From), solution.CellAt(step.To));
        var parallel = solution.Network.Links.Where(other =>
            (Passes(other, other.A) && (solution.CellAt(other.A), solution.CellAt(other.B)) == key)
            || (Passes(other, other.B) && (solution.CellAt(other.B), solution.CellAt(other.A)) == key));
        return string.Join('+', parallel.Select(other => other.Element).Distinct());
    }

    private double WidthOf(Link link, int from, int to)
    {
        if (!Passes(link, from)) return 0;
        return double.IsInfinity(link.SquareMillimetres) ? double.PositiveInfinity : together[(solution.CellAt(from), solution.CellAt(to))];
    }

    private double Downhill(Link link, int from, int to)
    {
        if (to == 0) return 0;
        return solution.PressureAt(from) >= solution.PressureAt(to) - Level ? WidthOf(link, from, to) : 0;
    }

    /// <summary>
    /// Searched from sump outward, against the oil. A shared exhaust may be kept full under a little pressure, so the way
    /// need not be without any; it must only run downhill.
    /// </summary>
    private double TowardsSump(Link link, int inner, int outer)
    {
        if (solution.IsSource(outer)) return 0;
        return solution.PressureAt(outer) >= solution.PressureAt(inner) - Level ? WidthOf(link, outer, inner) : 0;
    }
}
