using System.Collections.Immutable;
using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

/// <summary>Turns a network into symbols and lines. Every passage becomes one symbol; the sump none: each element drains by itself.</summary>
internal sealed class DiagramBuilder
{
    private readonly Network network;
    private readonly Diagram diagram;
    private readonly Symbol?[] ofNode;

    /// <summary>Grooves in which ports of one valve meet: part of its symbol.</summary>
    private readonly HashSet<int> grooves = [];

    private DiagramBuilder(Network network)
    {
        this.network = network;
        diagram = new Diagram(network);
        ofNode = new Symbol?[network.Nodes.Length];
    }

    /// <summary>The symbols and lines of a network.</summary>
    /// <param name="network">The network.</param>
    /// <param name="stops">Names of elements whose metal is to be drawn, since oil stops there.</param>
    public static Diagram Build(Network network, IReadOnlySet<string> stops)
    {
        var builder = new DiagramBuilder(network);
        builder.AddNodes();
        builder.AddPump();
        builder.AddValves();
        builder.AddLever();
        builder.AddRegulators();
        builder.AddSwitches();
        builder.AddBalls();
        builder.AddLinks(stops);
        builder.AddStores();
        return builder.diagram;
    }

    private void AddNodes()
    {
        foreach (var link in network.Links.Where(link => link.Kind is LinkKind.ValvePort or LinkKind.LeverPort))
        {
            if (network.Nodes[link.A].Kind == NodeKind.Opening) grooves.Add(link.A);
            if (network.Nodes[link.B].Kind == NodeKind.Opening) grooves.Add(link.B);
        }

        foreach (var node in network.Nodes)
        {
            if (node.Kind == NodeKind.Passage) ofNode[node.Index] = Add(SymbolKind.Passage, node.Name, node.Index);
            else if (node.Kind == NodeKind.Opening && !grooves.Contains(node.Index))
                ofNode[node.Index] = Add(SymbolKind.Meeting, node.Name, node.Index, network.Links.First(link => link.A == node.Index || link.B == node.Index).Detail);
        }
    }

    private Symbol Add(SymbolKind kind, string name, int element, string detail = "", ImmutableArray<ImmutableArray<Joining>> positions = default)
    {
        var symbol = new Symbol
        {
            Index = diagram.Symbols.Count,
            Kind = kind,
            Name = name,
            Element = element,
            Detail = detail,
            Positions = positions.IsDefault ? [] : positions,
        };
        diagram.Symbols.Add(symbol);
        return symbol;
    }

    /// <summary>A line from a node's symbol to an element's, unless the element has one for the same purpose; to the sump, a drain.</summary>
    private void Connect(Symbol element, int node, string role = "", int? link = null)
    {
        if (node < 0) return;
        if (node == 0)
        {
            element.Drains = true;
            return;
        }

        if (ofNode[node] is not { } symbol || element.Ports.Any(port => port.Node == node && port.Role == role)) return;
        var inner = new Port(element, node, role);
        var outer = new Port(symbol, node, "");
        element.Ports.Add(inner);
        symbol.Ports.Add(outer);
        diagram.Wires.Add(new Wire(outer, inner, node, link));
    }

    private void AddPump()
    {
        if (network.Pump >= 0) Connect(Add(SymbolKind.Pump, "pump", 0), network.Pump, "out");
    }

    private void AddValves()
    {
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            AddJoining(SymbolKind.Valve, spool.Name, i, [Joinings(spool.Source.Rest), Joinings(spool.Source.Moved)]);
        }
    }

    private void AddJoining(SymbolKind kind, string name, int element, ImmutableArray<ImmutableArray<Joining>> positions)
    {
        var symbol = Add(kind, name, element, "", positions);
        foreach (var node in positions.SelectMany(position => position).SelectMany(joining => joining.Nodes).Distinct()) Connect(symbol, node);
    }

    private ImmutableArray<Joining> Joinings(ImmutableArray<Model.Port> ports) =>
    [
        .. ports.Select(port => new Joining([.. port.Passages.Select(passage => network.FindNode(passage.Name)).Where(node => node >= 0).Distinct()]))
            .Where(joining => joining.Nodes.Length > 0),
    ];

    private void AddLever()
    {
        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            if (revision.Lever.IsEmpty) continue;
            var positions = network.LeverPositions.Select(name => Joinings([.. revision.Lever.Where(lever => lever.Name == name).SelectMany(lever => lever.Ports)]));
            AddJoining(SymbolKind.Lever, $"{part.Name}.lever", 0, [.. positions]);
        }
    }

    private void AddRegulators()
    {
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            var regulator = network.Regulators[i];
            var spills = regulator.Kind is RegulatorKind.Line or RegulatorKind.Relief;
            var symbol = Add(
                spills ? SymbolKind.Spilling : regulator.Kind == RegulatorKind.Solenoid ? SymbolKind.PressureSolenoid : SymbolKind.Reducing, regulator.Name, i);
            if (spills)
            {
                Connect(symbol, regulator.Out, "in");
                foreach (var spill in regulator.Spills.IsEmpty ? [regulator.To] : regulator.Spills) Connect(symbol, spill, "out");
                continue;
            }

            Connect(symbol, regulator.From, "in");
            Connect(symbol, regulator.Out, "out");
            Connect(symbol, regulator.To, "drain");
        }
    }

    private void AddSwitches()
    {
        for (var i = 0; i < network.Switches.Length; i++)
        {
            var solenoid = network.Switches[i].Source;
            var symbol = Add(SymbolKind.Switch, network.Switches[i].Name, i);
            Connect(symbol, network.FindNode(solenoid.Feed.Name), "in");
            Connect(symbol, network.FindNode(solenoid.Out.Name), "out");
            Connect(symbol, network.FindNode(solenoid.To.Name), "drain");
        }
    }

    private void AddBalls()
    {
        for (var i = 0; i < network.Balls.Length; i++)
        {
            var ball = network.Balls[i];
            var symbol = Add(SymbolKind.Ball, ball.Name, i);
            Connect(symbol, ball.Pocket, "pocket");
            foreach (var link in network.Links.Where(link => link.Gate.Kind == GateKind.Ball && link.Gate.Element == i))
            {
                // The pocket's own end may be an opening that the seat's oil comes through.
                if (link.A != ball.Pocket) Connect(symbol, link.A, "pocket", link.Index);
                Connect(symbol, link.B, FormattableString.Invariant($"seat {link.Gate.Position}"), link.Index);
            }
        }
    }

    private void AddLinks(IReadOnlySet<string> stops)
    {
        var metal = new Dictionary<string, Symbol>();
        foreach (var link in network.Links)
        {
            if (grooves.Contains(link.A) || grooves.Contains(link.B)) continue;
            switch (link.Kind)
            {
                case LinkKind.Opening:
                case LinkKind.Restriction:
                case LinkKind.Leak:
                    AddHole(link);
                    break;
                case LinkKind.RegulatorPort or LinkKind.Metal when network.Stuck.Any(stuck => stuck.Name == link.Element):
                    AddBetween(SymbolKind.Stuck, link);
                    break;
                case LinkKind.Metal when stops.Contains(link.Element):
                    if (!metal.TryGetValue(link.Element, out var blank))
                        metal[link.Element] = blank = Add(SymbolKind.Metal, link.Element, link.Index, link.Detail);
                    Connect(blank, link.A, "", link.Index);
                    Connect(blank, link.B, "", link.Index);
                    break;
            }
        }
    }

    private void AddHole(Link link)
    {
        var (a, b) = (ofNode[link.A], ofNode[link.B]);
        if (a is not null && b is not null && (a.Kind == SymbolKind.Meeting || b.Kind == SymbolKind.Meeting) && link.Kind == LinkKind.Opening)
        {
            // An opening at which several passages meet is a symbol itself.
            var (passage, meeting) = a.Kind == SymbolKind.Meeting ? (b, a) : (a, b);
            var outer = new Port(passage, passage.Element, "");
            var inner = new Port(meeting, passage.Element, "");
            passage.Ports.Add(outer);
            meeting.Ports.Add(inner);
            diagram.Wires.Add(new Wire(outer, inner, passage.Element, link.Index));
            return;
        }

        AddBetween(
            link.Kind == LinkKind.Leak ? SymbolKind.Leak : double.IsInfinity(link.SquareMillimetres) ? SymbolKind.Joined : SymbolKind.Orifice, link);
    }

    private void AddBetween(SymbolKind kind, Link link)
    {
        var symbol = Add(kind, link.Element, link.Index, link.Detail);
        Connect(symbol, link.A, "a", link.Index);
        Connect(symbol, link.B, "b", link.Index);
    }

    private void AddStores()
    {
        for (var i = 0; i < network.Accumulators.Length; i++)
            Connect(Add(SymbolKind.Accumulator, network.Accumulators[i].Name, i), network.Accumulators[i].Node);
        for (var i = 0; i < network.Clutches.Length; i++)
        {
            var clutch = network.Clutches[i];
            var symbol = Add(SymbolKind.Clutch, clutch.Clutch.Name, i);
            if (clutch.Chamber >= 0)
            {
                var link = network.Links.First(link => link.Kind == LinkKind.Chamber && link.B == clutch.Chamber);
                Connect(symbol, link.A, "apply", link.Index);
            }

            Connect(symbol, clutch.ReleaseChamber, "release");
        }
    }
}
