using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// The way that a node's oil takes, or would take: open links first, and through as few closed ones as possible. Of
/// closed links, those that are open in the matched set are where the way ought to go.
/// </summary>
internal sealed class Routes
{
    private const double Uphill = 30;
    private const double ClosedHere = 1000;
    private const double ClosedAlways = 3000;
    private const double ToForeign = 200;
    private const double Unusual = 1500;
    private const double Level = 1e-3;

    private readonly GearSolution solution;
    private readonly HashSet<string> referenceOpen = [];
    private readonly HashSet<string> referenceWalls = [];
    private readonly HashSet<string> referenceFed = [];
    private readonly Lazy<List<Func<int, IReadOnlyList<Step>?>>> sources;
    private readonly Lazy<List<Func<int, IReadOnlyList<Step>?>>> matchedSources;

    public Routes(GearSolution solution, IEnumerable<GearSolution> reference)
    {
        this.solution = solution;
        foreach (var state in reference) Learn(state);
        sources = new(() => FromSources(Cost), LazyThreadSafetyMode.None);
        matchedSources = new(() => FromSources(CostAsMatched), LazyThreadSafetyMode.None);
    }

    /// <summary>The way from a source to a node; null when there is none even through closed links.</summary>
    public IReadOnlyList<Step>? From(int node) => Best(sources.Value, node);

    /// <summary>The way that a node's oil ought to take, as in the matched set; null when there is none.</summary>
    public IReadOnlyList<Step>? AsMatched(int node) => Best(matchedSources.Value, node);

    private List<Func<int, IReadOnlyList<Step>?>> FromSources(Func<Link, int, int, double> cost)
    {
        var starts = solution.Inputs.Fixed.Where(pair => pair.Kilopascals > 0 && pair.Node > 0).Select(pair => pair.Node).ToList();
        if (solution.Network.Pump > 0) starts.Insert(0, solution.Network.Pump);
        return [.. starts.Select(start => OilGraph.Cheapest(solution.Network, start, cost))];
    }

    private IReadOnlyList<Step>? Best(List<Func<int, IReadOnlyList<Step>?>> ways, int node) =>
        ways.Select(way => way(node)).Where(way => way is not null).MinBy(way => CostOf(way!));

    /// <summary>The way from a node to sump; null when there is none even through closed links.</summary>
    public IReadOnlyList<Step>? ToSump(int node) => OilGraph.Cheapest(
        solution.Network, node, (link, from, to) => solution.Network.Pump == to ? double.PositiveInfinity : Base(link, from, to))(0);

    /// <summary>The first step that lets no oil pass, or null.</summary>
    public Step? FirstClosed(IReadOnlyList<Step> way)
    {
        foreach (var step in way)
        {
            if (!solution.IsOpen(step.Link)) return step;
        }

        return null;
    }

    /// <summary>What stops, or starves, a node's oil; null when it has its supply or no way is known at all.</summary>
    public Stop? StopOf(int node)
    {
        if (AsMatched(node) is not { Count: > 0 } way) return null;
        if (FirstClosed(way) is { } closed) return new Stop(closed.Link.Element, ReasonOf(closed.Link), closed.Link.Place);
        if (DrainOf(node) is { } drain)
        {
            return new Stop(
                drain.Link.Element, Phrase.Of($"drains to sump: {PressureAt(node):bare} of {PressureAt(way[0].From)} left"), drain.Link.Place);
        }

        var steepest = way.MaxBy(step => solution.PressureAt(step.From) - solution.PressureAt(step.To));
        var lost = solution.PressureAt(steepest.From) - solution.PressureAt(steepest.To);
        if (lost <= Level) return null;
        return new Stop(
            steepest.Link.Element,
            Phrase.Of($"lost here: {PressureAt(steepest.To)} of {PressureAt(steepest.From)} left"),
            steepest.Link.Place);
    }

    /// <summary>
    /// Where a supplied node's oil leaves to sump by a way that is not open in the matched set: the first such link, from the
    /// node. Null when its oil does not leave, or only by ways that are open there too.
    /// </summary>
    public Step? DrainOf(int node)
    {
        if (solution.OilAt(node) != OilState.Between || ToSump(node) is not { } way || FirstClosed(way) is not null) return null;
        foreach (var step in way)
        {
            if (!referenceOpen.Contains(KeyOf(solution.Network, step.Link))) return step;
        }

        return null;
    }

    /// <summary>The first step on the way from a source to a node that is not open in the matched set; null when all are.</summary>
    public Step? LeavesUsualWays(int node)
    {
        foreach (var step in From(node) ?? [])
        {
            if (!referenceOpen.Contains(KeyOf(solution.Network, step.Link))) return step;
        }

        return null;
    }

    /// <summary>What keeps a servo off though its apply side is full: oil on its release side that cannot leave, or is fed there.</summary>
    public Stop? ReleaseStopOf(int node)
    {
        if (solution.OilAt(node) == OilState.Trapped)
        {
            return ToSump(node) is { } drain && FirstClosed(drain) is { } shut
                ? new Stop(shut.Link.Element, Phrase.Of($"release oil cannot leave: {ReasonOf(shut.Link)}"), shut.Link.Place)
                : null;
        }

        if (From(node) is not { Count: > 0 } way) return null;
        var unusual = way.FirstOrDefault(step => !referenceFed.Contains(KeyOf(solution.Network, step.Link)), way[^1]);
        return new Stop(unusual.Link.Element, Phrase.Of($"feeds the release side"), unusual.Link.Place);
    }

    private Pressure PressureAt(int node) => new(solution.PressureAt(node));

    /// <summary>Why no oil passes a link, in a few words.</summary>
    public Phrase ReasonOf(Link link) => link.Gate.Kind switch
    {
        GateKind.Ball => Phrase.Of($"closed by ball {solution.Network.Balls[link.Gate.Element].Name}"),
        GateKind.Valve when solution.Network.Spools[link.Gate.Element].Stuck is { } stuck => Phrase.Of($"valve {new Stand.Spool(false, stuck)}"),
        GateKind.Valve => solution.Moved[link.Gate.Element] ? Phrase.Of($"valve moved") : Phrase.Of($"valve at rest"),
        GateKind.Lever => solution.Inputs.Lever < 0
            ? Phrase.Of($"manual valve has no such position")
            : Phrase.Of($"manual valve in {solution.Network.LeverPositions[solution.Inputs.Lever]}"),
        GateKind.Solenoid => solution.Inputs.Fed[link.Gate.Element] ? Phrase.Of($"solenoid feeds its outlet") : Phrase.Of($"solenoid drains its outlet"),
        GateKind.Regulator => Phrase.Of($"regulator set to {new Pressure(solution.Sets[link.Gate.Element])}"),
        GateKind.Open or GateKind.Shut => link.Detail,
    };

    /// <summary>A link's name across assemblies: its element, its ends, and the position that opens it.</summary>
    public static string KeyOf(Network network, Link link)
    {
        var (a, b) = (network.Nodes[link.A].Name, network.Nodes[link.B].Name);
        if (string.CompareOrdinal(a, b) > 0) (a, b) = (b, a);
        return link.Gate.Kind == GateKind.Valve ? $"{link.Element}|{a}|{b}|{link.Gate.Position}" : $"{link.Element}|{a}|{b}";
    }

    private void Learn(GearSolution state)
    {
        foreach (var link in state.Network.Links)
        {
            if (link.Kind == LinkKind.Metal) referenceWalls.UnionWith([link.Element, KeyOf(state.Network, link)]);
            if (!state.IsOpen(link)) continue;
            referenceOpen.Add(KeyOf(state.Network, link));
            referenceOpen.Add(link.Element);
            referenceOpen.Add(EndsOf(state.Network, link));
            if (state.PressureAt(link.A) > Level && state.PressureAt(link.B) > Level) referenceFed.Add(KeyOf(state.Network, link));
        }
    }

    private static string EndsOf(Network network, Link link)
    {
        var (a, b) = (network.Nodes[link.A].Name, network.Nodes[link.B].Name);
        return string.CompareOrdinal(a, b) < 0 ? $"{a}|{b}" : $"{b}|{a}";
    }

    private double CostOf(IReadOnlyList<Step> way) => way.Sum(step => Cost(step.Link, step.From, step.To));

    /// <summary>Where oil gets by itself, links that are open count first.</summary>
    private double Cost(Link link, int from, int to) => to == 0 || from == 0 ? double.PositiveInfinity : Base(link, from, to);

    /// <summary>Where oil ought to come from, links count first that bring it in the matched set, open here or not.</summary>
    private double CostAsMatched(Link link, int from, int to)
    {
        if (to == 0 || from == 0) return double.PositiveInfinity;
        return solution.IsOpen(link) && !referenceFed.Contains(KeyOf(solution.Network, link)) && link.Kind != LinkKind.Chamber
            ? Unusual
            : Base(link, from, to);
    }

    /// <summary>A check ball never was meant to let oil out of its pocket.</summary>
    private bool IsAgainstCheckBall(Link link, int from) =>
        link.Gate.Kind == GateKind.Ball && from == link.A && solution.Network.Balls[link.Gate.Element].Seats.Length == 1;

    private double Base(Link link, int from, int to)
    {
        if (solution.IsOpen(link))
            return solution.PressureAt(from) >= solution.PressureAt(to) - Level ? 1 : Uphill;
        if (IsAgainstCheckBall(link, from)) return ClosedAlways;
        if (link.Kind != LinkKind.Metal)
            return referenceOpen.Contains(KeyOf(solution.Network, link)) ? ClosedHere : ClosedAlways;
        if (referenceWalls.Contains(KeyOf(solution.Network, link))) return ClosedAlways;
        // The same metal between other passages: old metal, but only here does it part these two.
        if (referenceWalls.Contains(link.Element)) return ClosedHere + (ToForeign / 2);
        var (a, b) = (solution.Network.Nodes[from], solution.Network.Nodes[to]);
        return a.Circuit == b.Circuit ? ClosedHere : ClosedHere + ToForeign;
    }
}
