using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using QuikGraph.Collections;

namespace Circuits.Solving.Flow;

/// <summary>Compiles a network for flow: what oil flows through from one place to another. What each kind of element is there stands in that kind's file.</summary>
internal sealed partial class FlowDrafter : IElementKinds<Network>
{
    private const double PerPascal = 1e-3;
    private const double Pascals = 1e3;
    private const double SquareMetres = 1e-6;
    private readonly Network network;
    private readonly ForestDisjointSet<int> joined = new();
    private readonly List<string> names = [];
    private readonly List<FlowElement> drafted = [];
    private readonly List<Assumption> assumptions = [];

    private FlowDrafter(Network network) => this.network = network;

    /// <summary>Compiles a network.</summary>
    /// <param name="network">The network.</param>
    public static FlowNetwork Compile(Network network)
    {
        var drafter = new FlowDrafter(network);
        drafter.AddCells();
        drafter.Each(network);
        drafter.AssumeBands();
        return drafter.Finish();
    }

    /// <summary>How far regulators that nobody measured, and balls, stray before they are fully open: one sentence says it of all.</summary>
    private void AssumeBands()
    {
        Assume($"regulator opens fully over {new Pressure(FlowDefaults.RegulatorBand)} from its set pressure", FlowKind.FeedPort, FlowKind.DrainPort);
        Assume($"spilling regulator opens each outlet fully over {new Pressure(FlowDefaults.SpillBand)}", FlowKind.SpillPort);
        Assume($"screen's bypass opens fully over {new Pressure(FlowDefaults.BypassBand)}", FlowKind.BypassPort);
        Assume($"ball turns over within {new Pressure(FlowDefaults.BallBand)}", FlowKind.CheckSeat, FlowKind.TwoWaySeat);

        void Assume(PhraseBuilder what, params FlowKind[] kinds)
        {
            if (drafted.Find(element => kinds.Contains(element.Kind) && !IsMeasured(element)) is not { } first) return;
            var place = first.Link >= 0 ? network.Links[first.Link].Place : network.Regulators[first.Element].Place;
            assumptions.Add(new Assumption($"assumed that a {what.ToPhrase()}", place));
        }

        bool IsMeasured(FlowElement element) =>
            element.Kind is FlowKind.FeedPort or FlowKind.DrainPort or FlowKind.SpillPort && network.Regulators[element.Element].Spool is not null;
    }

    public void Balls(Network network) { } // what they close are links

    public void Valves(Network network) { } // their ports are links

    public void Solenoids(Network network) { } // those that hold a pressure are regulators; ports of the others are links

    public void Lever(Network network) { } // its ports are links

    public void Restrictions(Network network) { } // links, some with a law of their own

    public void Leaks(Network network) { } // links, some with a law of their own

    public void Accumulators(Network network) { } // take oil up and let none through

    public void Clutches(Network network) { } // take oil up and let none through

    private void AddCells()
    {
        foreach (var node in network.Nodes)
        {
            joined.MakeSet(node.Index);
            names.Add(node.Name);
        }
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
            Slot = link >= 0 && network.Links[link].Shape is Shape.Slot slot ? (slot.Width.Millimetres / 1e3, slot.Length.Millimetres / 1e3) : null,
            DependsOn = [a, b, .. openers],
        });

    private FlowNetwork Finish()
    {
        // Cells are numbered, and named, by the first node that lies in them.
        var cellOf = new int[names.Count];
        var cellNames = new List<string>();
        var numbers = new Dictionary<int, int>();
        for (var i = 0; i < names.Count; i++)
        {
            if (numbers.TryAdd(joined.FindSet(i), cellNames.Count)) cellNames.Add(names[i]);
            cellOf[i] = numbers[joined.FindSet(i)];
        }

        int[] ByCell(IEnumerable<int> nodes) => [.. nodes.Select(node => cellOf[node])];
        var elements = drafted.Where(element => cellOf[element.A] != cellOf[element.B]).Select(element => element.Between(cellOf)).ToArray();
        var pistonAssumptions = new List<Assumption>();
        var holders = new PistonDrafter(network, cellOf, cellNames.Count, pistonAssumptions.Add);
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
            Pistons = holders.Pistons,
            Volumes = holders.Volumes,
            Pump = network.Pump < 0 ? -1 : cellOf[network.Pump],
            Assumptions = assumptions,
            PistonAssumptions = pistonAssumptions,
        }.Order();
    }
}
