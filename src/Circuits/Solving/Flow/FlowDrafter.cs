using System.Globalization;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>Compiles a network for flow.</summary>
internal sealed class FlowDrafter
{
    private const double PerPascal = 1e-3;
    private const double Pascals = 1e3;
    private const double SquareMetres = 1e-6;
    private readonly Network network;
    private readonly List<int> parent = [];
    private readonly List<string> names = [];
    private readonly Dictionary<int, (double Length, double Section)> tracks = [];
    private readonly List<FlowElement> drafted = [];
    private readonly List<Assumption> assumptions = [];

    private FlowDrafter(Network network) => this.network = network;

    /// <summary>Compiles a network.</summary>
    /// <param name="network">The network.</param>
    public static FlowNetwork Compile(Network network)
    {
        var drafter = new FlowDrafter(network);
        drafter.AddCells();
        drafter.AddLinks();
        drafter.AddRegulators();
        drafter.AssumeBands();
        return drafter.Finish();
    }

    private void AddCells()
    {
        foreach (var node in network.Nodes)
        {
            parent.Add(node.Index);
            names.Add(node.Name);
        }

        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            foreach (var passage in revision.Passages)
            {
                if (passage is not { Length: { } length, Section: { } section }) continue;
                var node = network.FindNode(new PassageName(part.Name, passage.Name));
                if (node > 0) tracks[node] = (length.Millimetres / 1000, section.SquareMillimetres * SquareMetres);
            }
        }
    }

    private void AddLinks()
    {
        foreach (var link in network.Links)
        {
            if (link.Gate.Kind is GateKind.Shut or GateKind.Regulator || IsLineSpill(link)) continue;
            var (a, b) = (EndOf(link.A), EndOf(link.B));
            if (double.IsInfinity(link.SquareMillimetres) && link.Gate.Kind == GateKind.Open)
            {
                Join(a, b);
                continue;
            }

            Add(Kind(link), a, b, link.SquareMillimetres, link.Gate.Element, link.Gate.Position, link.Index, Openers(link));
        }
    }

    /// <summary>The static answer lets a line regulator spill at all times; here its ports are elements of their own.</summary>
    private bool IsLineSpill(Link link) => link.Kind == LinkKind.RegulatorPort && link.Gate.Kind == GateKind.Open
        && network.Regulators.Any(regulator => regulator.Name == link.Element);

    private FlowKind Kind(Link link) => link.Gate.Kind switch
    {
        GateKind.Valve => FlowKind.SpoolPort,
        GateKind.Ball when network.Balls[link.Gate.Element].Seats.Length == 1 => FlowKind.CheckSeat,
        GateKind.Ball => FlowKind.TwoWaySeat,
        _ => OwnLaws.Has(link.Shape) ? FlowKind.Own : FlowKind.Orifice,
    };

    private int[] Openers(Link link)
    {
        if (link.Gate.Kind == GateKind.Valve) return Forces(network.Spools[link.Gate.Element]).Nodes;
        if (Kind(link) != FlowKind.TwoWaySeat) return [];
        return [.. network.Balls[link.Gate.Element].Seats.Select(seat => network.Links[seat].B)];
    }

    private static (int[] Nodes, double[] Factors) Forces(SpoolElement spool)
    {
        var moving = spool.MovedBy.Where(signal => signal.Node > 0).ToList();
        var holding = spool.HeldBy.Where(signal => signal.Node > 0).ToList();
        return (
            [.. moving.Concat(holding).Select(signal => signal.Node)],
            [.. moving.Select(signal => signal.Factor * PerPascal), .. holding.Select(signal => -signal.Factor * PerPascal)]);
    }

    private static (int[] Nodes, double[] Factors) Signals(RegulatorElement regulator)
    {
        var signals = regulator.SetBy.Where(signal => signal.Node > 0).ToList();
        return ([.. signals.Select(signal => signal.Node)], [.. signals.Select(signal => signal.Factor)]);
    }

    private void AddRegulators()
    {
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            var regulator = network.Regulators[i];
            var signals = Signals(regulator).Nodes;
            if (regulator.Kind is RegulatorKind.Line or RegulatorKind.Relief)
            {
                int[] outlets = regulator.Spills.IsEmpty ? [0] : [.. regulator.Spills];
                for (var k = 0; k < outlets.Length; k++)
                    Add(FlowKind.SpillPort, regulator.Out, outlets[k], regulator.SquareMillimetres, i, k, -1, signals);
                continue;
            }

            if (regulator.From >= 0) Add(FlowKind.FeedPort, regulator.From, regulator.Out, regulator.SquareMillimetres, i, 0, -1, signals);
            if (regulator.To >= 0) Add(FlowKind.DrainPort, regulator.Out, regulator.To, regulator.SquareMillimetres, i, 0, -1, signals);
        }
    }

    /// <summary>How far regulators that nobody measured, and balls, stray before they are fully open: one sentence says it of all.</summary>
    private void AssumeBands()
    {
        Assume(FlowDefaults.RegulatorBand, "regulator opens fully over {0} kPa from its set pressure", FlowKind.FeedPort, FlowKind.DrainPort);
        Assume(FlowDefaults.SpillBand, "spilling regulator opens each outlet fully over {0} kPa", FlowKind.SpillPort);
        Assume(FlowDefaults.BallBand, "ball turns over within {0} kPa", FlowKind.CheckSeat, FlowKind.TwoWaySeat);

        void Assume(double kilopascals, string what, params FlowKind[] kinds)
        {
            if (drafted.Find(element => kinds.Contains(element.Kind) && !IsMeasured(element)) is not { } first) return;
            var place = first.Link >= 0 ? network.Links[first.Link].Place : network.Regulators[first.Element].Place;
            assumptions.Add(new Assumption("assumed that a " + string.Format(CultureInfo.InvariantCulture, what, kilopascals), place));
        }

        bool IsMeasured(FlowElement element) =>
            element.Kind is FlowKind.FeedPort or FlowKind.DrainPort or FlowKind.SpillPort && network.Regulators[element.Element].Spool is not null;
    }

    private void Add(
        FlowKind kind, int a, int b, double squareMillimetres, int element, int position, int link, int[] openers) =>
        drafted.Add(new FlowElement
        {
            Kind = kind,
            A = a,
            B = b,
            Area = squareMillimetres * SquareMetres,
            Element = element,
            Position = position,
            Link = link,
            Gate = link < 0 ? Gate.Open : network.Links[link].Gate,
            Law = kind == FlowKind.Own ? OwnLaws.Of(network.Links[link].Shape!) : null,
            DependsOn = [a, b, .. openers],
        });

    /// <summary>
    /// Where a passage says how long it is, whatever touches it does so through half of that length: in by one opening and out
    /// by another is then the whole.
    /// </summary>
    private int EndOf(int node)
    {
        if (!tracks.TryGetValue(node, out var track)) return node;
        parent.Add(parent.Count);
        names.Add(network.Nodes[node].Name);
        var arm = parent.Count - 1;
        drafted.Add(new FlowElement
        {
            Kind = FlowKind.Track,
            A = node,
            B = arm,
            Area = track.Section,
            Length = track.Length / 2,
            DependsOn = [node, arm],
        });
        return arm;
    }

    private int Root(int node)
    {
        while (parent[node] != node) node = parent[node] = parent[parent[node]];
        return node;
    }

    private void Join(int a, int b)
    {
        var (first, second) = (Root(a), Root(b));
        parent[Math.Max(first, second)] = Math.Min(first, second);
    }

    private FlowNetwork Finish()
    {
        var cellOf = new int[parent.Count];
        var cellNames = new List<string>();
        for (var i = 0; i < parent.Count; i++)
        {
            if (Root(i) == i) cellNames.Add(names[i]);
            cellOf[i] = Root(i) == i ? cellNames.Count - 1 : cellOf[Root(i)];
        }

        int[] ByCell(IEnumerable<int> nodes) => [.. nodes.Select(node => cellOf[node])];
        var elements = drafted.Where(element => cellOf[element.A] != cellOf[element.B]).Select(element => element.Between(cellOf)).ToArray();
        var pistonAssumptions = new List<Assumption>();
        var holders = new PistonDrafter(network, cellOf, pistonAssumptions.Add);
        var pistons = holders.Pistons().ToArray();
        return new FlowNetwork
        {
            Cells = cellNames.Count,
            CellOf = cellOf[..network.Nodes.Length],
            Arms = [.. elements.Where(element => element.Kind == FlowKind.Track && !cellOf.AsSpan(0, network.Nodes.Length).Contains(element.B))
                .Select(element => (element.B, element.A))],
            Names = [.. cellNames],
            Elements = elements,
            Spools = [.. network.Spools.Select(spool => SpoolOf(spool, ByCell))],
            Balls = [.. network.Balls.Select(ball => ball.Seats.Length == 2 ? new FlowBall(ByCell(ball.Seats.Select(seat => network.Links[seat].B))) : null)],
            Regulators = [.. network.Regulators.Select(regulator => RegulatorOf(regulator, ByCell))],
            Pistons = pistons,
            Volumes = holders.Volumes(cellNames.Count),
            Pump = network.Pump < 0 ? -1 : cellOf[network.Pump],
            Assumptions = assumptions,
            PistonAssumptions = pistonAssumptions,
        }.Order();
    }

    private FlowSpool SpoolOf(SpoolElement spool, Func<IEnumerable<int>, int[]> byCell)
    {
        // Nothing moves one that has stuck; a force without end says the same.
        if (spool.Source.Stuck is { } stuck)
            return new FlowSpool([], [], stuck == StuckAt.Moved ? -FlowDefaults.StuckForce : FlowDefaults.StuckForce, FlowDefaults.LeastSpoolForce);
        var (nodes, factors) = Forces(spool);
        var rate = spool.Source.HeldBy.OfType<SpoolForce.Spring>().Concat(spool.Source.MovedBy.OfType<SpoolForce.Spring>())
            .Sum(spring => spring.Rate?.NewtonsPerMillimetre ?? 0);
        var given = rate * (spool.Source.Travel?.Millimetres ?? 0);
        if (given <= 0)
        {
            assumptions.Add(new Assumption(
                $"assumed that valve {spool.Name} travels over {FlowDefaults.SpoolRange:0 %} of its spring's force: no spring rate and travel given",
                spool.Source.Place));
        }

        var range = given > 0 ? given : FlowDefaults.SpoolRange * Math.Abs(spool.Springs);
        return new FlowSpool(byCell(nodes), factors, spool.Springs, Math.Max(range, FlowDefaults.LeastSpoolForce))
        {
            Lap = spool.Source is { Travel: { } travel, Overlap: { } overlap } ? (travel.Millimetres / 1e3, overlap.Millimetres / 1e3) : null,
        };
    }

    private static FlowRegulator RegulatorOf(RegulatorElement regulator, Func<IEnumerable<int>, int[]> byCell)
    {
        var (nodes, factors) = Signals(regulator);
        var spills = regulator.Kind is RegulatorKind.Line or RegulatorKind.Relief;
        return new FlowRegulator(
            byCell([regulator.Out])[0], regulator.Spring * Pascals, byCell(nodes), factors, regulator.Kind == RegulatorKind.Solenoid,
            (spills ? FlowDefaults.SpillBand : FlowDefaults.RegulatorBand) * Pascals)
        { Spool = SpoolOf(regulator) };
    }

    private static RegulatorSizes? SpoolOf(RegulatorElement regulator) => regulator.Spool is { } spool
        ? new RegulatorSizes(
            spool.Land.SquareMillimetres * SquareMetres, spool.Rate.NewtonsPerMillimetre * 1e3,
            regulator.SquareMillimetres * SquareMetres / (spool.Travel.Millimetres / 1e3), spool.Travel.Millimetres / 1e3, spool.Overlap.Millimetres / 1e3)
        : null;
}
