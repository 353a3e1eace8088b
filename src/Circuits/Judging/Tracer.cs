using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// Answers "why" with a tree: each fact stands over the facts that it follows from, down to the pump, or to what stops
/// the oil. Where a valve decides, its own signals are traced in turn.
/// </summary>
internal sealed class Tracer
{
    private const double Nothing = 0.01;

    /// <summary>Less than this fraction of line pressure is no supply, wherever it comes from.</summary>
    private const double Trickle = 0.02;

    /// <summary>Less than this fraction of what its regulator is set to is no line pressure that is held.</summary>
    private const double Held = 0.95;

    private readonly GearSolution solution;
    private readonly Network network;
    private readonly Routes routes;
    private readonly Ways ways;
    private readonly HashSet<int> explained = [];

    public Tracer(GearSolution solution, IEnumerable<GearSolution> reference)
    {
        this.solution = solution;
        network = solution.Network;
        routes = new Routes(solution, reference);
        ways = new Ways().Of(solution);
    }

    /// <summary>Both trees of a clutch or passage.</summary>
    /// <exception cref="ArgumentException">The assembly has no such clutch or passage.</exception>
    public Trace Trace(string gear, string name)
    {
        var node = Find(name);
        if (node < 0) throw new ArgumentException($"this assembly has no clutch or passage {name}", nameof(name));
        // The second tree does not repeat what the first one explains.
        return new Trace(gear, name, HeldOff(name, node) ?? Supply(node), Release(node));
    }

    private int Find(string name)
    {
        var clutch = network.Clutches.FirstOrDefault(candidate => candidate.Clutch.Name == name);
        if (clutch is not null) return clutch.Chamber;
        foreach (var node in network.Nodes)
        {
            if (node.Kind == NodeKind.Passage && node.Name == name) return node.Index;
        }

        return -1;
    }

    private Pressure PressureAt(int node) => new(solution.PressureAt(node));

    private Phrase Named(int node) =>
        network.Nodes[node].Kind == NodeKind.Chamber ? Phrase.Of($"clutch {network.Nodes[node].Name}") : Phrase.Of($"{network.Nodes[node].Name}");

    private TraceFact Supply(int node)
    {
        var pressure = solution.PressureAt(node);
        var place = network.Nodes[node].Place;
        if (!explained.Add(node)) return Told(node);
        if (pressure > Nothing && solution.OilAt(node) == OilState.Trapped)
            return new TraceFact(Phrase.Of($"{Named(node)} keeps {PressureAt(node)}: joined to neither supply nor sump"), place, [.. ShutIn(node)]);
        if (pressure > Trickle * solution.Line && (ways.Supply(node) ?? routes.From(node)) is { } way && routes.FirstClosed(way) is null)
            return Reached(way, node, way.Count);
        return Stopped(node, place);
    }

    /// <summary>A supplied node, over the step that brings its oil, and so on down to the source.</summary>
    private TraceFact Reached(IReadOnlyList<Step> way, int node, int steps)
    {
        // The whole way is marked before the conditions along it are told: they refer to it, not it to them.
        explained.Add(node);
        var last = steps;
        while (last > 0 && explained.Add(way[last - 1].From)) last--;
        return Reached(way, node, steps, last);
    }

    private TraceFact Reached(IReadOnlyList<Step> way, int node, int steps, int last)
    {
        var pressure = PressureAt(node);
        if (steps == 0) return Source(node, pressure);
        var step = way[steps - 1];
        var because = Condition(step.Link).ToList();
        because.Add(steps == last ? Told(step.From) : Reached(way, step.From, steps - 1, last));
        var text = step.Link.Kind == LinkKind.Chamber
            ? Phrase.Of($"{Named(node)} has {pressure}: {Named(step.From)} feeds it")
            : Phrase.Of($"{Named(node)} has {pressure} from {Named(step.From)} through {Through(step.Link)}{Drained(node)}");
        return new TraceFact(text, step.Link.Place, [.. because]) { IsStep = true };
    }

    /// <summary>A node that the tree explains in another place.</summary>
    private TraceFact Told(int node) =>
        new(Phrase.Of($"{Named(node)} has {PressureAt(node)} (told elsewhere)"), network.Nodes[node].Place, []);

    private TraceFact Source(int node, Pressure pressure)
    {
        var unit = network.Assembly.Unit;
        if (node != network.Pump)
            return new TraceFact(Phrase.Of($"{Named(node)} is held at {pressure} from outside"), network.Nodes[node].Place, []);
        var lines = Enumerable.Range(0, network.Regulators.Length).Where(i => network.Regulators[i].Kind == RegulatorKind.Line).ToList();
        if (lines.Count == 0)
            return new TraceFact(Phrase.Of($"{Named(node)} is fed by the pump; nothing regulates it, taken as {pressure}"), unit.Pump!.Place, []);
        var lowest = lines.MinBy(i => solution.Sets[i]);
        var line = network.Regulators[lowest];
        if (pressure.Kilopascals < Held * solution.Sets[lowest])
            return new TraceFact(Phrase.Of($"{Named(node)} is fed by the pump, which cannot hold the {new Pressure(solution.Sets[lowest])} that {line.Name} is set to: {pressure}"), line.Place, []);
        return new TraceFact(Phrase.Of($"{Named(node)} is fed by the pump; {line.Name} holds it at {pressure}"), line.Place, []);
    }

    private static Phrase Through(Link link)
    {
        var detail = link.Kind switch
        {
            LinkKind.ValvePort => Phrase.Of($"valve {link.Element}, {link.Detail}"),
            LinkKind.LeverPort => Phrase.Of($"the manual valve {link.Detail}"),
            LinkKind.SolenoidPort => Phrase.Of($"solenoid {link.Element}, {link.Detail}"),
            LinkKind.RegulatorPort => Phrase.Of($"regulator {link.Element}, {link.Detail}"),
            LinkKind.Leak => Phrase.Of($"leak {link.Element} ({link.Detail})"),
            LinkKind.Screen => Phrase.Of($"screen {link.Element} ({link.Detail})"),
            LinkKind.Bypass => Phrase.Of($"the bypass of screen {link.Element.Replace(":bypass", "", StringComparison.Ordinal)}"),
            LinkKind.Opening or LinkKind.Seat or LinkKind.Restriction or LinkKind.Chamber or LinkKind.Metal => Phrase.Of($"{link.Element} ({link.Detail})"),
        };
        return Phrase.Of($"{detail}{OfRevision(link)}");
    }

    private Phrase Drained(int node) => solution.OilAt(node) == OilState.Between ? Phrase.Of($", and drains") : Phrase.Empty;

    /// <summary>Why a link lets oil pass: the position of its valve, ball or regulator, with its own reasons.</summary>
    private IEnumerable<TraceFact> Condition(Link link) => link.Gate.Kind switch
    {
        GateKind.Valve => [Valve(link.Gate.Element)],
        GateKind.Ball => [Ball(link.Gate.Element)],
        GateKind.Regulator => [Regulator(link.Gate.Element)],
        GateKind.Solenoid => [Solenoid(link.Gate.Element)],
        GateKind.Open or GateKind.Shut or GateKind.Lever => [],
    };

    private TraceFact Solenoid(int number)
    {
        var element = network.Switches[number];
        return new TraceFact(
            solution.Inputs.Fed[number]
                ? Phrase.Of($"solenoid {element.Name} feeds its outlet in this gear")
                : Phrase.Of($"solenoid {element.Name} drains its outlet in this gear"),
            element.Source.Place, []);
    }

    private TraceFact Valve(int index)
    {
        var spool = network.Spools[index];
        var moving = spool.MovedBy.Where(signal => signal.Node >= 0).Sum(signal => signal.Factor * solution.PressureAt(signal.Node));
        var holding = spool.HeldBy.Where(signal => signal.Node >= 0).Sum(signal => signal.Factor * solution.PressureAt(signal.Node)) + spool.Springs;
        var moved = solution.Moved[index];
        if (spool.Stuck is { } stuck) return new TraceFact(Phrase.Of($"valve {spool.Name} is {new Stand.Spool(false, stuck)}"), spool.Source.Place, []);
        var stands = moved ? Phrase.Of($"is moved") : Phrase.Of($"is at rest");
        var text = Phrase.Of($"valve {spool.Name} {stands}: {new Force(moving)} move it, {new Force(holding)} hold it");
        return new TraceFact(text, spool.Source.Place, [.. Signals(spool.MovedBy.Concat(spool.HeldBy))]);
    }

    private TraceFact Regulator(int index)
    {
        var regulator = network.Regulators[index];
        var set = solution.Sets[index];
        var kind = regulator.Solenoid is null ? Phrase.Of($"regulator") : Phrase.Of($"solenoid");
        var less = solution.Modes[index] == RegulatorModes.Feeding ? Phrase.Of($", its supply gives less") : Phrase.Empty;
        var text = double.IsInfinity(set)
            ? Phrase.Of($"{kind} {regulator.Name} gives its whole feed")
            : Phrase.Of($"{kind} {regulator.Name} is set to {new Pressure(set)}{less}");
        return new TraceFact(text, regulator.Place, [.. Signals(regulator.SetBy)]);
    }

    private IEnumerable<TraceFact> Signals(IEnumerable<Signal> signals) =>
        signals.Where(signal => signal.Node > 0).Select(signal => signal.Node).Distinct().Select(Supply);

    private TraceFact Ball(int index)
    {
        var ball = network.Balls[index];
        var seat = solution.Balls[index];
        var text = seat < 0 ? Phrase.Of($"ball {ball.Name} is off its seat") : Phrase.Of($"ball {ball.Name} closes {network.Links[ball.Seats[seat]].Element}");
        return new TraceFact(text, ball.Source.Place, []);
    }

    /// <summary>A servo whose release oil takes off more than half of what applies it; null for any other clutch.</summary>
    private TraceFact? HeldOff(string name, int node)
    {
        var clutch = network.Clutches.FirstOrDefault(candidate => candidate.Clutch.Name == name);
        if (clutch is null || clutch.ReleaseChamber < 0) return null;
        var (on, off) = (solution.PressureAt(node), clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber));
        if (on <= Nothing || off < on / 2) return null;
        return new TraceFact(
            Phrase.Of($"clutch {name} is held off: {new Pressure(NetPressure.Of(clutch, solution))} net, release oil takes off {new Pressure(off)} of {new Pressure(on)}"),
            clutch.Clutch.Place, [Supply(node), Supply(clutch.ReleaseChamber)]);
    }

    private IEnumerable<TraceFact> ShutIn(int node)
    {
        if (routes.ToSump(node) is not { } way || routes.FirstClosed(way) is not { } closed) yield break;
        yield return new TraceFact(
            Phrase.Of($"its way to sump stops at {closed.Link.Element}{OfRevision(closed.Link)}: {routes.ReasonOf(closed.Link)}"), closed.Link.Place, [.. Condition(closed.Link)]);
    }

    private TraceFact Stopped(int node, Place place)
    {
        var head = Phrase.Of($"{Named(node)} lacks supply: {PressureAt(node)}");
        if (routes.AsMatched(node) is not { } way) return new TraceFact(Phrase.Of($"{head}; no way from any source is known"), place, []);
        var closed = way.ToList().FindIndex(step => !solution.IsOpen(step.Link));
        if (closed < 0) return new TraceFact(head, place, [Reached(way, node, way.Count)]);
        var step = way[closed];
        var because = Condition(step.Link).ToList();
        because.Add(explained.Contains(step.From) ? Told(step.From) : Reached(way, step.From, closed));
        var stop = new TraceFact(
            Phrase.Of($"stops at {step.Link.Element}{OfRevision(step.Link)}, between {Named(step.From)} and {Named(step.To)}: {routes.ReasonOf(step.Link)}"),
            step.Link.Place, [.. because])
        {
            IsStep = true,
        };
        var further = way.Skip(closed + 1).Where(later => !solution.IsOpen(later.Link))
            .Select(later => new TraceFact(Phrase.Of($"and beyond it at {later.Link.Element}{OfRevision(later.Link)}: {routes.ReasonOf(later.Link)}"), later.Link.Place, []));
        return new TraceFact(head, place, [stop, .. further]);
    }

    private static Phrase OfRevision(Link link) => link.Revision.Length == 0 ? Phrase.Empty : Phrase.Of($" of {link.Part} {link.Revision}");

    private TraceFact Release(int node)
    {
        var place = network.Nodes[node].Place;
        if (ways.ToSump(node) is { } open && solution.OilAt(node) == OilState.Exhaust) return Drain(open, 0, node);
        if (routes.ToSump(node) is not { } way) return new TraceFact(Phrase.Of($"{Named(node)} has no way to sump in this assembly"), place, []);
        var steps = way.Count > 0 && way[0].From != node ? way.Reverse().Select(step => new Step(step.To, step.From, step.Link)).ToList() : way;
        if (routes.FirstClosed(steps) is not { } closed) return Drain(steps, 0, node);
        return new TraceFact(
            Phrase.Of($"{Named(node)} is shut off from sump at {closed.Link.Element}{OfRevision(closed.Link)}: {routes.ReasonOf(closed.Link)}"),
            closed.Link.Place, [.. Condition(closed.Link)]);
    }

    private TraceFact Drain(IReadOnlyList<Step> way, int at, int node)
    {
        if (at == way.Count) return new TraceFact(Phrase.Of($"sump"), null, []);
        var step = way[at];
        var because = Condition(step.Link).ToList();
        because.Add(Drain(way, at + 1, step.To));
        var text = step.Link.Kind == LinkKind.Chamber
            ? Phrase.Of($"{Named(node)} empties into {Named(step.To)}")
            : Phrase.Of($"{Named(node)} drains to {Named(step.To)} through {Through(step.Link)}");
        return new TraceFact(text, step.Link.Place, [.. because]) { IsStep = true };
    }
}
