using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Valves(Network network) => In(Turn.Valves, () =>
    {
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            AddJoining(SymbolKind.Valve, spool.Name, i, [Joinings(spool.Source.Rest), Joinings(spool.Source.Moved)]);
        }
    });

    private void AddJoining(SymbolKind kind, string name, int element, ImmutableArray<ImmutableArray<Joining>> positions)
    {
        var symbol = Add(kind, name, element, null, positions);
        foreach (var node in positions.SelectMany(position => position).SelectMany(joining => joining.Nodes).Distinct()) Connect(symbol, node);
    }

    private ImmutableArray<Joining> Joinings(ImmutableArray<Model.Port> ports) =>
    [
        .. ports.Select(port => new Joining([.. port.Passages.Select(passage => network.FindNode(passage.Name)).Where(node => node >= 0).Distinct()]))
            .Where(joining => joining.Nodes.Length > 0),
    ];
}

internal sealed partial class Figures
{
    /// <summary>Both positions as boxes, moved above rest; lines lead to the box that is in use.</summary>
    private void Valve(Symbol symbol)
    {
        var active = solution.Network.Spools[symbol.Element].Stuck is StuckAt.Midway or StuckAt.MidwayShut ? -1 : solution.Moved[symbol.Element] ? 1 : 0;
        var height = symbol.FigureHeight / 2;
        var (left, right) = (symbol.FigureX + Inset, symbol.FigureX + symbol.FigureWidth - Inset);
        for (var position = 0; position < 2; position++)
        {
            var top = symbol.FigureY + (position == 1 ? 0 : height);
            svg.Box(left, top, right - left, height, position == active ? "active" : "idlefig");
            Joinings(symbol, position, left, right, top, height, position == active ? "ink" : "idle");
        }

        var middle = symbol.FigureY + (active < 0 ? height / 2 : active == 1 ? 0 : height);
        foreach (var port in symbol.Ports)
        {
            var at = Within(symbol, port, middle, height);
            svg.Line($"M{port.X:0.#} {port.Y:0.#}L{(port.OnLeft ? left : right):0.#} {at:0.#}", "ink");
        }

        // A spring at the end that is pushed on at rest.
        var (x, y) = (left + 6, symbol.FigureY + symbol.FigureHeight);
        svg.Line($"M{x:0.#} {y:0.#}l3 -5l4 5l4 -5l4 5l4 -5l3 5", "thin");
    }

    /// <summary>The height of a port within a box of a valve: its own, moved with the box.</summary>
    private static double Within(Symbol symbol, Port port, double top, double height) => port.Y - MiddleY(symbol) + top + (height / 2);

    /// <summary>What a box joins: lines from port to port; to sump, a tank; ports that it shuts, a bar across.</summary>
    private void Joinings(Symbol symbol, int position, double left, double right, double top, double height, string style)
    {
        var open = new HashSet<int>();
        var bends = 0;
        foreach (var joining in symbol.Positions[position])
        {
            var ports = symbol.Ports.Where(port => joining.Nodes.Contains(port.Node)).ToList();
            if (ports.Count + (joining.Nodes.Contains(0) ? 1 : 0) < 2) continue;
            open.UnionWith(joining.Nodes);
            var spine = left + ((right - left) * ((bends++ % 3) + 1) / 4);
            var ys = ports.Select(port => Within(symbol, port, top, height)).ToList();
            if (ports is [var one, var two] && one.OnLeft != two.OnLeft && !joining.Nodes.Contains(0))
            {
                svg.Line($"M{(one.OnLeft ? left : right):0.#} {ys[0]:0.#}L{(two.OnLeft ? left : right):0.#} {ys[1]:0.#}", style);
                continue;
            }

            foreach (var (port, y) in ports.Zip(ys)) svg.Line($"M{(port.OnLeft ? left : right):0.#} {y:0.#}H{spine:0.#}", style);
            if (ys.Max() - ys.Min() > 0.5) svg.Line($"M{spine:0.#} {ys.Min():0.#}V{ys.Max():0.#}", style);
            if (joining.Nodes.Contains(0)) svg.Line($"M{spine:0.#} {ys.Max():0.#}v3M{spine - 4:0.#} {ys.Max() + 1:0.#}v4h8v-4", style);
        }

        foreach (var port in symbol.Ports.Where(port => !open.Contains(port.Node)))
        {
            var y = Within(symbol, port, top, height);
            var x = port.OnLeft ? left : right;
            svg.Line($"M{x:0.#} {y:0.#}h{(port.OnLeft ? 5 : -5)}m0 -3v6", style);
        }
    }
}
