using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>Lays a spec's parts together into a <see cref="BruteNetwork"/>.</summary>
internal sealed class BruteBuilder
{
    private readonly UnitSpec unit;
    private readonly GearSpec gear;
    private readonly List<(PartSpec Part, RevisionSpec Revision)> parts;
    private readonly Dictionary<Ref, int> nodes = [];
    private readonly List<bool> named = [true];
    private readonly List<Contact> contacts = [];
    private readonly List<BruteLink> links = [];
    private readonly List<BruteSpool> spools = [];
    private readonly List<DraftBall> balls = [];
    private readonly List<BruteRegulator> regulators = [];

    public BruteBuilder(UnitSpec unit, ImmutableArray<string> choice, GearSpec gear)
    {
        this.unit = unit;
        this.gear = gear;
        parts = [.. unit.Parts.Zip(choice, (part, name) => (part, part.Revisions.First(revision => revision.Name == name)))];
        nodes[Ref.Sump] = 0;
        foreach (var (part, revision) in parts)
        {
            foreach (var passage in revision.Passages) nodes[new Ref(part.Name, passage.Name)] = NewNode(true);
        }
    }

    public BruteNetwork Build()
    {
        var layers = unit.Joints.ToDictionary(joint => joint.Name, joint => new BruteJoint(joint, parts, nodes, NewNode));
        foreach (var joint in layers.Values) contacts.AddRange(joint.Contacts());
        DropDeadEnds();
        foreach (var (part, revision) in parts)
        {
            foreach (var ball in revision.Balls) AddBall(part, ball, layers);
        }

        foreach (var (part, revision) in parts) AddElements(part, revision);
        foreach (var contact in contacts)
            links.Add(new BruteLink(contact.A, contact.B, contact.Area, contact.Ball < 0 ? BruteGate.Always : BruteGate.Ball, contact.Ball, contact.Seat));
        return Compile();
    }

    /// <summary>An opening that one thing touches leads nowhere; a ball has nothing to close there.</summary>
    private void DropDeadEnds()
    {
        bool IsDead(int node) => !named[node] && contacts.Count(contact => contact.A == node || contact.B == node) < 2;
        while (contacts.Find(contact => IsDead(contact.A) || IsDead(contact.B)) is { } dead) contacts.Remove(dead);
    }

    private int NewNode(bool hasName)
    {
        named.Add(hasName);
        return named.Count - 1;
    }

    private int Node(Ref passage) => nodes.GetValueOrDefault(passage, -1);

    private void AddBall(PartSpec part, BallSpec ball, Dictionary<string, BruteJoint> layers)
    {
        if (Node(ball.Pocket) is var pocket && pocket < 0) return;
        var draft = new DraftBall($"{part.Name}.{ball.Name}", pocket);
        balls.Add(draft);
        foreach (var seat in ball.Seats)
        {
            if (seat.To is { } to)
            {
                if (Node(to) is var beyond && beyond < 0) continue;
                var seals = ball.Diameter is null || seat.Hole < ball.Diameter;
                links.Add(new BruteLink(
                    pocket, beyond, SizeSpec.Hole(seat.Hole).Area, seals ? BruteGate.Ball : BruteGate.Always, balls.Count - 1, draft.Beyond.Count));
                if (seals) draft.Beyond.Add(() => beyond);
                continue;
            }

            CloseAtLocation(ball, seat, layers, draft);
        }
    }

    private void CloseAtLocation(BallSpec ball, SeatSpec seat, Dictionary<string, BruteJoint> layers, DraftBall draft)
    {
        var revision = parts.First(pair => pair.Part.Name == ball.Pocket.Part).Revision;
        var pocket = revision.Passages.First(passage => passage.Name == ball.Pocket.Passage);
        var use = pocket.At.FirstOrDefault(at => at.Location == seat.Location && (seat.Joint is null || at.Joint == seat.Joint));
        if (use.Joint is null) return;
        if (layers[use.Joint].SeatOf(ball, seat.Location!) is not (>= 0 and var opening)) return;
        var gated = layers[use.Joint].PocketSide(contacts, opening, ball.Pocket.Part, seat.Location!).ToList();
        if (gated.Count == 0) return;
        foreach (var index in gated) contacts[index] = contacts[index] with { Ball = balls.Count - 1, Seat = draft.Beyond.Count };
        draft.Beyond.Add(() => Beyond(opening, gated));
    }

    /// <summary>What lies behind a seat: the opening itself, or, where it only leads on to one thing, that.</summary>
    private int Beyond(int opening, List<int> from)
    {
        var (at, came) = (opening, from.ToHashSet());
        while (!named[at])
        {
            var on = Enumerable.Range(0, contacts.Count).Where(i => (contacts[i].A == at || contacts[i].B == at) && !came.Contains(i)).ToList();
            if (on.Count != 1) break;
            at = contacts[on[0]].A == at ? contacts[on[0]].B : contacts[on[0]].A;
            came = [on[0]];
        }

        return at;
    }

    private void AddElements(PartSpec part, RevisionSpec revision)
    {
        foreach (var valve in revision.Valves)
        {
            AddPorts(valve.Rest, BruteGate.Spool, spools.Count, 0);
            AddPorts(valve.Moved, BruteGate.Spool, spools.Count, 1);
            spools.Add(new BruteSpool(
                $"{part.Name}.{valve.Name}", Signals(valve.MovedBy), Signals(valve.HeldBy),
                valve.HeldBy.Sum(force => force.Spring) - valve.MovedBy.Sum(force => force.Spring)));
        }

        foreach (var regulator in revision.Regulators) AddRegulator(part, regulator);
        foreach (var solenoid in revision.Solenoids) AddSolenoid(part, solenoid);
        foreach (var (position, ports) in revision.Lever)
        {
            if (position == gear.Lever) AddPorts(ports, BruteGate.Always, 0, 0);
        }

        foreach (var hole in revision.Restrictions.Concat(revision.Leaks))
            AddLink(Node(hole.A), Node(hole.B), hole.Size.Area, BruteGate.Always, 0, 0);
    }

    private ImmutableArray<(int, double)> Signals(IEnumerable<ForceSpec> forces) =>
        [.. forces.Where(force => force.From is { } from && Node(from) >= 0).Select(force => (Node(force.From!.Value), (force.Area ?? 100) / 1000))];

    /// <summary>A port that joins three or more is a star, as an opening is.</summary>
    private void AddPorts(IEnumerable<PortSpec> ports, BruteGate gate, int element, int position)
    {
        foreach (var port in ports)
        {
            var ends = port.Passages.Select(Node).Where(node => node >= 0).Distinct().ToList();
            var area = port.Area ?? 40;
            if (ends.Count == 2) AddLink(ends[0], ends[1], area, gate, element, position);
            if (ends.Count < 3) continue;
            var middle = NewNode(false);
            foreach (var end in ends) AddLink(end, middle, area * Math.Sqrt(2), gate, element, position);
        }
    }

    private void AddLink(int a, int b, double area, BruteGate gate, int element, int position)
    {
        if (a >= 0 && b >= 0 && a != b) links.Add(new BruteLink(a, b, area, gate, element, position));
    }

    private void AddRegulator(PartSpec part, RegulatorSpec spec)
    {
        var setBy = spec.SetBy.Where(signal => Node(signal.From) >= 0).Select(signal => (Node(signal.From), signal.Ratio)).ToImmutableArray();
        var (name, area) = ($"{part.Name}.{spec.Name}", spec.Port ?? 30);
        if (spec.Holds is not { } holds)
        {
            AddReducing(new BruteRegulator(
                name, BruteKind.Reducing, Node(spec.From!.Value), Node(spec.Out!.Value), Node(spec.To ?? Ref.Sump), spec.Spring, setBy, area));
            return;
        }

        if (Node(holds) < 0) return;
        if (IsLine(holds))
        {
            if (spec.SpillsTo.FirstOrDefault(outlet => Node(outlet) > 0) is { Part: { Length: > 0 } } outlet)
                AddLink(Node(holds), Node(outlet), area, BruteGate.Always, 0, 0);
            regulators.Add(new BruteRegulator(name, BruteKind.Line, Node(holds), Node(holds), 0, spec.Spring, setBy, area));
            return;
        }

        var to = spec.SpillsTo.Select(Node).FirstOrDefault(node => node >= 0);
        AddLink(Node(holds), to, area, BruteGate.Regulator, regulators.Count, 2);
        regulators.Add(new BruteRegulator(name, BruteKind.Relief, Node(holds), Node(holds), to, spec.Spring, setBy, area));
    }

    private void AddReducing(BruteRegulator regulator)
    {
        if (regulator.Out < 0) return;
        AddLink(regulator.From, regulator.Out, regulator.Area, BruteGate.Regulator, regulators.Count, 0);
        AddLink(regulator.Out, regulator.To, regulator.Area, BruteGate.Regulator, regulators.Count, 2);
        regulators.Add(regulator);
    }

    /// <summary>A spilling regulator of the pump's circuit that fixed openings join to the pump's passage.</summary>
    private bool IsLine(Ref holds)
    {
        if (unit.Pump is not { } pump || Node(pump.Into) < 0 || Circuit(holds) != Circuit(pump.Into)) return false;
        var seen = new HashSet<int> { Node(pump.Into), 0 };
        var holes = parts.SelectMany(pair => pair.Revision.Restrictions).Select(hole => (A: Node(hole.A), B: Node(hole.B)))
            .Where(pair => pair.A >= 0 && pair.B >= 0)
            .Concat(contacts.Where(contact => contact.Ball < 0).Select(contact => (contact.A, contact.B)))
            .Concat(links.Where(link => link.Gate == BruteGate.Always && balls.Exists(ball => ball.Pocket == link.A)).Select(link => (link.A, link.B))).ToList();
        for (var grown = true; grown;)
        {
            grown = false;
            foreach (var (a, b) in holes)
            {
                if (a == 0 || b == 0 || seen.Contains(a) == seen.Contains(b)) continue;
                seen.UnionWith([a, b]);
                grown = true;
            }
        }

        return seen.Contains(Node(holds));
    }

    private string? Circuit(Ref passage) => parts
        .Where(pair => pair.Part.Name == passage.Part).SelectMany(pair => pair.Revision.Passages)
        .Where(own => own.Name == passage.Passage).Select(own => own.Circuit ?? own.Name).FirstOrDefault();

    private void AddSolenoid(PartSpec part, SolenoidSpec solenoid)
    {
        var energized = gear.Energize.Contains(solenoid.Name);
        var command = gear.Commands.Where(pair => pair.Solenoid == solenoid.Name).Select(pair => (double?)pair.Kilopascals).FirstOrDefault();
        var (feed, to, area) = (Node(solenoid.Feed), Node(solenoid.To ?? Ref.Sump), solenoid.Port ?? 3);
        if (!solenoid.IsPressure)
        {
            var fed = (energized || command is not null) != solenoid.AtRestHigh;
            AddLink(Node(solenoid.Out), fed ? feed : to, area, BruteGate.Always, 0, 0);
            return;
        }

        var set = command ?? (energized != solenoid.AtRestHigh ? double.PositiveInfinity : 0);
        AddReducing(new BruteRegulator($"{part.Name}.{solenoid.Name}", BruteKind.Reducing, feed, Node(solenoid.Out), to, 0, [], area) { Command = set });
    }

    private BruteNetwork Compile()
    {
        var cell = Enumerable.Range(0, named.Count).ToArray();
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var link in links)
            {
                if (link.Gate != BruteGate.Always || !double.IsInfinity(link.Area) || cell[link.A] == cell[link.B]) continue;
                var (low, high) = (Math.Min(cell[link.A], cell[link.B]), Math.Max(cell[link.A], cell[link.B]));
                for (var i = 0; i < cell.Length; i++) cell[i] = cell[i] == high ? low : cell[i];
                changed = true;
            }
        }

        int At(int node) => node < 0 ? -1 : cell[node];
        ImmutableArray<(int, double)> Move(ImmutableArray<(int Cell, double Factor)> signals) => [.. signals.Select(signal => (At(signal.Cell), signal.Factor))];
        var pump = unit.Pump is { } source ? At(Node(source.Into)) : -1;
        return new BruteNetwork
        {
            Cells = named.Count,
            CellOf = nodes.ToImmutableDictionary(pair => pair.Key, pair => cell[pair.Value]),
            Links = [.. links.Where(link => cell[link.A] != cell[link.B]).Select(link => link with { A = cell[link.A], B = cell[link.B] })],
            Spools = [.. spools.Select(spool => spool with { Moving = Move(spool.Moving), Holding = Move(spool.Holding) })],
            Balls = [.. balls.Select(ball => new BruteBall(ball.Name, At(ball.Pocket), [.. ball.Beyond.Select(beyond => At(beyond()))]))],
            Regulators = [.. regulators.Select(regulator => regulator with
            {
                From = At(regulator.From), Out = At(regulator.Out), To = At(regulator.To), SetBy = Move(regulator.SetBy),
            })],
            Pump = pump,
            Unregulated = unit.Pump?.Relief ?? 2000,
            Given = gear.Signals.Where(signal => Node(signal.At) > 0).GroupBy(signal => At(Node(signal.At)))
                .Where(group => group.Key > 0).ToImmutableDictionary(group => group.Key, group => group.Last().Kilopascals),
            Nameless = [.. Enumerable.Range(0, named.Count).GroupBy(node => cell[node]).Where(group => group.All(node => !named[node])).Select(group => group.Key)],
        };
    }

    internal sealed record Contact(int A, int B, double Area)
    {
        public int Ball { get; init; } = -1;

        public int Seat { get; init; }
    }

    private sealed record DraftBall(string Name, int Pocket)
    {
        public List<Func<int>> Beyond { get; } = [];
    }
}
