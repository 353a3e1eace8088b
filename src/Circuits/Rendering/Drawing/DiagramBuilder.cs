using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

/// <summary>Turns a network into symbols and lines. Every passage becomes one symbol; the sump none: each element drains by itself. How each kind is drawn stands in that kind's file.</summary>
internal sealed partial class DiagramBuilder : IElementKinds<Network>
{
    private readonly Network network;
    private readonly Diagram diagram;
    private readonly Symbol?[] ofNode;
    private readonly IReadOnlySet<string> stops;
    private readonly List<(Turn Turn, Action Add)> turns = [];

    /// <summary>Grooves in which ports of one valve meet: part of its symbol.</summary>
    private readonly HashSet<int> grooves = [];

    private DiagramBuilder(Network network, IReadOnlySet<string> stops)
    {
        this.network = network;
        this.stops = stops;
        diagram = new Diagram(network);
        ofNode = new Symbol?[network.Nodes.Length];
    }

    /// <summary>The order in which symbols are numbered: what is placed depends on it.</summary>
    private enum Turn
    {
        Passages,
        Valves,
        Lever,
        Regulators,
        Solenoids,
        Balls,
        Openings,
        Screens,
        Accumulators,
        Clutches,
    }

    /// <summary>The symbols and lines of a network.</summary>
    /// <param name="network">The network.</param>
    /// <param name="stops">Names of elements whose metal is to be drawn, since oil stops there.</param>
    public static Diagram Build(Network network, IReadOnlySet<string> stops)
    {
        var builder = new DiagramBuilder(network, stops);
        builder.Each(network);
        foreach (var (_, add) in builder.turns.OrderBy(turn => turn.Turn)) add();
        return builder.diagram;
    }

    public void Restrictions(Network network) { } // links, which are drawn with the openings

    public void Leaks(Network network) { } // links, which are drawn with the openings

    private void In(Turn turn, Action add) => turns.Add((turn, add));

    private Symbol Add(SymbolKind kind, string name, int element, Phrase? detail = null, ImmutableArray<ImmutableArray<Joining>> positions = default)
    {
        var symbol = new Symbol
        {
            Index = diagram.Symbols.Count,
            Kind = kind,
            Name = name,
            Element = element,
            Detail = detail ?? Phrase.Empty,
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
}
