using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>Adds valves, regulators, solenoids, restrictions, leaks, the pump and the clutches to the draft.</summary>
internal sealed class ElementDrafter(Draft draft)
{
    public List<SpoolElement> Spools { get; } = [];

    public List<RegulatorElement> Regulators { get; } = [];

    public List<SwitchElement> Switches { get; } = [];

    public List<string> LeverPositions { get; } = [];

    public List<ClutchElement> Clutches { get; } = [];

    public List<AccumulatorElement> Accumulators { get; } = [];

    public List<StuckElement> Stuck { get; } = [];

    public int Pump { get; private set; } = -1;

    private HashSet<int> lineHolds = [];
    private readonly List<int> joined = [];

    public void Add()
    {
        if (draft.Assembly.Unit.Pump is { } pump)
            Pump = Resolve(pump.Into, "the pump", "feeds");
        lineHolds = LineRegulators.FindHolds(draft, Pump);
        foreach (var (part, revision) in draft.Parts)
        {
            var owner = new Owner(part, revision);
            foreach (var valve in revision.Valves) AddValve(owner, valve);
            foreach (var regulator in revision.Regulators) AddRegulator(owner, regulator);
            foreach (var solenoid in revision.Solenoids) AddSolenoid(owner, solenoid);
            AddLever(owner);
            foreach (var accumulator in revision.Accumulators) AddAccumulator(owner, accumulator);
            foreach (var item in revision.Restrictions)
                AddHole(owner, LinkKind.Restriction, item.A, item.B, item.Shape, Defaults.OpeningArea, item.Place);
            foreach (var item in revision.Leaks)
                AddHole(owner, LinkKind.Leak, item.A, item.B, item.Shape, Defaults.LeakArea, item.Place);
        }

        foreach (var clutch in draft.Assembly.Unit.Clutches) AddClutch(clutch);
        LineRegulators.Check(draft, Pump, Regulators);
    }

    private int Resolve(PassageUse use, string element, string does)
    {
        if (use.Name.IsExhaust) return 0;
        if (draft.Passages.TryGetValue(use.Name, out var node)) return node;
        draft.Findings.Add(MissingName.Rule.At(use.Place, $"{element} {does} {use.Name}, which this assembly lacks"));
        return -1;
    }

    private void AddEdge(Owner owner, LinkKind kind, int a, int b, double area, Gate gate, string element, string detail, Place place, Shape? shape = null)
    {
        if (a < 0 || b < 0 || a == b) return;
        draft.Edges.Add(new Edge
        {
            Kind = kind,
            A = a,
            B = b,
            Area = area,
            Gate = gate,
            Element = element,
            Part = owner.Part.Name,
            Revision = owner.Revision.Name,
            Detail = detail,
            Place = place,
            Shape = shape,
        });
    }

    private void AddPorts(
        Owner owner, LinkKind kind, ImmutableArray<Port> ports, Gate gate, string element, string detail, double share = 1)
    {
        foreach (var port in ports)
        {
            joined.Clear();
            foreach (var passage in port.Passages)
            {
                if (Resolve(passage, element, "joins") is >= 0 and var node && !joined.Contains(node)) joined.Add(node);
            }

            var area = share * (port.Area?.SquareMillimetres ?? Defaults.SpoolPortArea);
            if (port.Area is null)
                draft.Assume($"assumed {Defaults.SpoolPortArea:0} mm2 for the ports of {element}: no area given", owner.PlaceOf(element, port.Place));
            if (joined.Count == 2)
            {
                AddEdge(owner, kind, joined[0], joined[1], area, gate, element, detail, port.Place);
                continue;
            }

            if (joined.Count < 2) continue;

            // Where more than two meet they meet in one groove, and any way through it has the port's area, as with a slot.
            var groove = draft.AddNode(NodeKind.Opening, element, null, port.Place);
            foreach (var node in joined)
                AddEdge(owner, kind, node, groove, area * Math.Sqrt(2), gate, element, detail, port.Place);
        }
    }

    private void AddValve(Owner owner, Valve valve)
    {
        var name = $"{owner.Part.Name}.{valve.Name}";
        var number = Spools.Count;
        owner.Places[name] = valve.Place;
        if (valve.Stuck is StuckAt.Midway or StuckAt.MidwayShut)
        {
            AddMidway(owner, valve, name);
        }
        else
        {
            AddPorts(owner, LinkKind.ValvePort, valve.Rest, new Gate(GateKind.Valve, number, 0), name, "at rest");
            AddPorts(owner, LinkKind.ValvePort, valve.Moved, new Gate(GateKind.Valve, number, 1), name, "moved");
        }

        var springs = Springs(valve.HeldBy) - Springs(valve.MovedBy);
        Spools.Add(new SpoolElement(name, Signals(name, valve, valve.MovedBy), Signals(name, valve, valve.HeldBy), springs, valve));
    }

    /// <summary>
    /// Between its positions a spool either leaves every port open a little or shuts them all. Its laps say which; without
    /// them it is for the one who asks to say.
    /// </summary>
    private void AddMidway(Owner owner, Valve valve, string name)
    {
        var detail = StuckText.Of(valve.Stuck!.Value);
        ImmutableArray<Port> ports = [.. valve.Rest, .. valve.Moved];
        if (valve.Stuck == StuckAt.Midway && valve.OpenMidway is not <= 0)
        {
            if (valve.OpenMidway is null)
            {
                draft.Assume(
                    string.Create(CultureInfo.InvariantCulture, $"assumed that {name}, stuck midway, leaves each of its ports {Defaults.MidwayShare * 100:0} % of its area: its laps are not given"),
                    valve.Place);
            }

            AddPorts(owner, LinkKind.ValvePort, ports, Gate.Open, name, detail, valve.OpenMidway ?? Defaults.MidwayShare);
            return;
        }

        foreach (var port in ports)
        {
            var nodes = port.Passages.Select(passage => Resolve(passage, name, "joins")).Where(node => node >= 0).ToList();
            for (var i = 1; i < nodes.Count; i++) AddShut(owner, nodes[0], nodes[i], name, detail, port.Place);
        }
    }

    /// <summary>A way that ought to open and never does.</summary>
    private void AddShut(Owner owner, int a, int b, string element, string why, Place place) =>
        AddEdge(owner, LinkKind.Metal, a, b, 0, Gate.Shut, element, why, place);

    private static double Springs(ImmutableArray<SpoolForce> forces) =>
        forces.OfType<SpoolForce.Spring>().Sum(spring => spring.Preload.Newtons);

    private ImmutableArray<Signal> Signals(string name, Valve valve, ImmutableArray<SpoolForce> forces)
    {
        var signals = ImmutableArray.CreateBuilder<Signal>();
        foreach (var signal in forces.OfType<SpoolForce.Signal>())
        {
            if (signal.Area is null)
                draft.Assume($"assumed {Defaults.SignalArea:0} mm2 for the signal lands of {name}: no area given", valve.Place);
            var area = signal.Area?.SquareMillimetres ?? Defaults.SignalArea;
            // 1 kPa on 1 mm2 is 0.001 N.
            signals.Add(new Signal(Resolve(signal.From, name, "is moved by"), area / 1000));
        }

        return signals.ToImmutable();
    }

    private void AddRegulator(Owner owner, Regulator regulator)
    {
        var name = $"{owner.Part.Name}.{regulator.Name}";
        var setBy = regulator.SetBy
            .Select(signal => new Signal(Resolve(signal.From, name, "is set by"), signal.Ratio)).ToImmutableArray();
        var area = PortArea(regulator.PortArea, Defaults.RegulatorPortArea, name, regulator.Place);
        if (regulator.Spring is null && (setBy.IsEmpty || regulator is Regulator.Spilling))
            draft.Assume($"assumed 0 kPa for the spring of {name}: none given", regulator.Place);
        var spring = regulator.Spring?.Kilopascals ?? 0;
        if (regulator.Stuck is { } stuck) Stuck.Add(new StuckElement(name, StuckText.Of(stuck), regulator.Place));
        switch (regulator)
        {
            case Regulator.Spilling { Stuck: { } how } spilling:
                AddStuck(owner, spilling, how, name, area);
                break;
            case Regulator.Reducing { Stuck: { } how } reducing:
                AddStuck(owner, reducing, how, name, area);
                break;
            case Regulator.Spilling spilling:
                var holds = Resolve(spilling.Holds, name, "holds");
                if (holds < 0) return;
                AddSpilling(owner, spilling, name, holds, setBy, area, spring);
                break;
            case Regulator.Reducing reducing:
                AddReducing(
                    owner, LinkKind.RegulatorPort, name,
                    (Resolve(reducing.From, name, "takes from"), Resolve(reducing.Out, name, "feeds"), Resolve(reducing.To, name, "drains to")),
                    new RegulatorElement(name, RegulatorKind.Reducing, 0, 0, 0, spring, setBy, area, null, regulator.Place) { Spool = regulator.Spool });
                break;
        }
    }

    private void AddSpilling(
        Owner owner, Regulator.Spilling spilling, string name, int holds, ImmutableArray<Signal> setBy, double area, double spring)
    {
        var outlets = spilling.SpillsTo.Select(outlet => Resolve(outlet, name, "spills to")).ToList().FindAll(node => node >= 0);
        var isLine = lineHolds.Contains(holds);
        var to = isLine
            ? outlets.FindIndex(node => node > 0) is >= 0 and var at ? outlets[at] : -1
            : outlets is [var first, ..] ? first : 0;
        var number = Regulators.Count;
        Regulators.Add(new RegulatorElement(
            name, isLine ? RegulatorKind.Line : RegulatorKind.Relief, holds, holds, to, spring, setBy, area, null, spilling.Place)
        {
            Spills = [.. outlets],
            Spool = spilling.Spool,
        });

        // A line regulator always spills: the pump gives more than is needed. A relief opens only above its set pressure.
        var gate = isLine ? Gate.Open : new Gate(GateKind.Regulator, number, RegulatorModes.Relieving);
        AddEdge(owner, LinkKind.RegulatorPort, holds, to, area, gate, name, "spill port", spilling.Place);
    }

    /// <summary>
    /// Stuck shut it limits nothing. Stuck open a relief is a hole; the line regulator then spills all that the pump gives,
    /// and holds next to nothing.
    /// </summary>
    private void AddStuck(Owner owner, Regulator.Spilling spilling, RegulatorStuck stuck, string name, double area)
    {
        var holds = Resolve(spilling.Holds, name, "holds");
        if (holds < 0) return;
        if (stuck == RegulatorStuck.Open && lineHolds.Contains(holds))
        {
            draft.Assume($"assumed no line pressure: {name} has stuck open and spills all that the pump gives", spilling.Place);
            AddSpilling(owner, spilling, name, holds, [], area, 0);
            return;
        }

        var to = spilling.SpillsTo.Select(outlet => Resolve(outlet, name, "spills to")).FirstOrDefault(node => node >= 0, 0);
        if (stuck == RegulatorStuck.Open)
            AddEdge(owner, LinkKind.RegulatorPort, holds, to, area, Gate.Open, name, StuckText.Of(stuck), spilling.Place);
        else
            AddShut(owner, holds, to, name, StuckText.Of(stuck), spilling.Place);
    }

    private void AddStuck(Owner owner, Regulator.Reducing reducing, RegulatorStuck stuck, string name, double area)
    {
        var (from, @out, to) = (Resolve(reducing.From, name, "takes from"), Resolve(reducing.Out, name, "feeds"), Resolve(reducing.To, name, "drains to"));
        Add(from, @out, stuck == RegulatorStuck.Open);
        Add(@out, to, stuck == RegulatorStuck.Drained);

        void Add(int a, int b, bool open)
        {
            if (open) AddEdge(owner, LinkKind.RegulatorPort, a, b, area, Gate.Open, name, StuckText.Of(stuck), reducing.Place);
            else AddShut(owner, a, b, name, StuckText.Of(stuck), reducing.Place);
        }
    }

    private void AddReducing(
        Owner owner, LinkKind kind, string name, (int From, int Out, int To) nodes, RegulatorElement element)
    {
        if (nodes.Out < 0) return;
        var number = Regulators.Count;
        Regulators.Add(element with { From = nodes.From, Out = nodes.Out, To = nodes.To });
        AddEdge(
            owner, kind, nodes.From, nodes.Out, element.SquareMillimetres, new Gate(GateKind.Regulator, number, RegulatorModes.Feeding),
            name, "feed port", element.Place);
        AddEdge(
            owner, kind, nodes.Out, nodes.To, element.SquareMillimetres, new Gate(GateKind.Regulator, number, RegulatorModes.Relieving),
            name, "drain port", element.Place);
    }

    private void AddSolenoid(Owner owner, Solenoid solenoid)
    {
        var name = $"{owner.Part.Name}.{solenoid.Name}";
        var area = PortArea(solenoid.PortArea, Defaults.SolenoidPortArea, name, solenoid.Place);
        var nodes = (From: Resolve(solenoid.Feed, name, "takes from"), Out: Resolve(solenoid.Out, name, "feeds"), To: Resolve(solenoid.To, name, "drains to"));
        if (solenoid.Kind == SolenoidKind.Pressure)
        {
            AddReducing(
                owner, LinkKind.SolenoidPort, name, nodes,
                new RegulatorElement(name, RegulatorKind.Solenoid, 0, 0, 0, 0, [], area, solenoid, solenoid.Place));
            return;
        }

        var number = Switches.Count;
        Switches.Add(new SwitchElement(name, solenoid));
        AddEdge(owner, LinkKind.SolenoidPort, nodes.Out, nodes.To, area, new Gate(GateKind.Solenoid, number, 0), name, "drained", solenoid.Place);
        AddEdge(owner, LinkKind.SolenoidPort, nodes.From, nodes.Out, area, new Gate(GateKind.Solenoid, number, 1), name, "fed", solenoid.Place);
    }

    private void AddLever(Owner owner)
    {
        var name = $"{owner.Part.Name}.lever";
        foreach (var position in owner.Revision.Lever)
        {
            if (!LeverPositions.Contains(position.Name)) LeverPositions.Add(position.Name);
            var number = LeverPositions.IndexOf(position.Name);
            AddPorts(
                owner, LinkKind.LeverPort, position.Ports, new Gate(GateKind.Lever, 0, number), name,
                draft.SkipsMetal ? "" : $"in {position.Name}");
        }
    }

    private void AddHole(Owner owner, LinkKind kind, PassageUse a, PassageUse b, Shape shape, double standard, Place place)
    {
        var element = $"{owner.Part.Name}:{Short(owner, a)}~{Short(owner, b)}";
        var (nodeA, nodeB) = (Resolve(a, element, "joins"), Resolve(b, element, "joins"));
        if (shape.Area is null)
            draft.Assume($"assumed {standard:0.##} mm2 for {element}: no size given", place);
        var area = shape is Shape.Gap gap ? GapHole.Area(gap) : shape.Area?.SquareMillimetres ?? standard;
        if (shape is Shape.Gap)
        {
            draft.Assume(
                string.Create(CultureInfo.InvariantCulture, $"assumed that the gap {element} loses as much as a hole of {area:0.0###} mm2, as it does at {GapHole.At:0} kPa in hot oil, where flow is not computed"),
                place);
        }

        var counts = shape is Shape.Gap or Shape.Hole { Depth: not null } ? shape : null;
        AddEdge(owner, kind, nodeA, nodeB, area, Gate.Open, element, draft.Words(shape), place, counts);
    }

    private static string Short(Owner owner, PassageUse use) =>
        use.Name.Part == owner.Part.Name ? use.Name.Passage : use.Name.ToString();

    private void AddAccumulator(Owner owner, Accumulator accumulator)
    {
        var name = $"{owner.Part.Name}.{accumulator.Name}";
        var node = Resolve(accumulator.At, name, "is filled from");
        if (node < 0) return;

        // Square millimetres times millimetres are microlitres.
        var volume = accumulator is { Area: { } area, Stroke: { } stroke } ? area.SquareMillimetres * stroke.Millimetres / 1000 : 1;
        Accumulators.Add(new AccumulatorElement(name, node, volume, accumulator));
    }

    private double PortArea(Area? given, double standard, string name, Place place)
    {
        if (given is null)
            draft.Assume($"assumed {standard:0} mm2 for the port of {name}: no area given", place);
        return given?.SquareMillimetres ?? standard;
    }

    private void AddClutch(Clutch declared)
    {
        var clutch = declared;
        foreach (var (_, revision) in draft.Parts)
        {
            foreach (var change in revision.Clutches)
            {
                if (change.Name == declared.Name) clutch = clutch.With(change);
            }
        }

        var chamber = -1;
        if (clutch.At is { } at && Resolve(at, $"clutch {clutch.Name}", "is fed from") is >= 0 and var passage)
        {
            chamber = draft.AddNode(NodeKind.Chamber, clutch.Name, draft.Nodes[passage].Circuit, clutch.Place);
            draft.Edges.Add(new Edge
            {
                Kind = LinkKind.Chamber,
                A = passage,
                B = chamber,
                Area = double.PositiveInfinity,
                Element = $"clutch {clutch.Name}",
                Part = at.Name.Part,
                Revision = "",
                Detail = "chamber",
                Place = clutch.Place,
            });
        }

        var release = clutch.ReleaseAt is { } releaseAt ? Resolve(releaseAt, $"clutch {clutch.Name}", "is released from") : -1;
        Clutches.Add(new ClutchElement(clutch, chamber, release, ReleaseShare(clutch)));
    }

    private double ReleaseShare(Clutch clutch)
    {
        if (clutch.ReleaseAt is null) return 0;
        if (clutch.Area is { } area && clutch.ReleaseArea is { } releaseArea)
            return releaseArea.SquareMillimetres / area.SquareMillimetres;
        draft.Assume($"assumed equal apply and release areas for clutch {clutch.Name}: not both given", clutch.Place);
        return 1;
    }

    private sealed record Owner(Part Part, Revision Revision)
    {
        public Dictionary<string, Place> Places { get; } = [];

        /// <summary>All ports of one element share one assumption, at the element's own line.</summary>
        public Place PlaceOf(string element, Place fallback)
        {
            if (Places.TryGetValue(element, out var place)) return place;
            return Places[element] = fallback;
        }
    }
}
