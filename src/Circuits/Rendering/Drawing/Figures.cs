using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Rendering.Drawing;

/// <summary>
/// Draws the figures of symbols in the manner of ISO 1219-1: pump, restriction, non-return and shuttle valve, directional valve, pressure
/// valves, solenoid, accumulator, single-acting cylinder. All figures are drawn here and taken from nowhere.
/// </summary>
internal sealed class Figures(SvgWriter svg, GearSolution solution, bool lettered = true)
{
    private const double Inset = 13;

    /// <summary>Draws a symbol's figure.</summary>
    public void Draw(Symbol symbol)
    {
        switch (symbol.Kind)
        {
            case SymbolKind.Pump:
                Pump(symbol);
                break;
            case SymbolKind.Meeting:
                svg.Box(symbol.FigureX + 1, symbol.FigureY + 1, symbol.FigureWidth - 2, symbol.FigureHeight - 2, "fig", round: 5);
                break;
            case SymbolKind.Joined:
                Leads(symbol, 0);
                svg.Circle(MiddleX(symbol), MiddleY(symbol), 3, "solid");
                break;
            case SymbolKind.Orifice:
            case SymbolKind.Leak:
                Restriction(symbol);
                break;
            case SymbolKind.Ball:
                Ball(symbol, solution.Balls[symbol.Element]);
                break;
            case SymbolKind.Valve:
                Valve(symbol, solution.Network.Spools[symbol.Element].Source.Stuck is Model.StuckAt.Midway or Model.StuckAt.MidwayShut ? -1 : solution.Moved[symbol.Element] ? 1 : 0);
                break;
            case SymbolKind.Lever:
                Lever(symbol, solution.Inputs.Lever);
                break;
            case SymbolKind.Spilling:
            case SymbolKind.Reducing:
            case SymbolKind.Stuck:
                PressureValve(symbol);
                break;
            case SymbolKind.Switch:
            case SymbolKind.PressureSolenoid:
                Solenoid(symbol);
                break;
            case SymbolKind.Accumulator:
                Accumulator(symbol, solution.PressureAt(solution.Network.Accumulators[symbol.Element].Node) > 0);
                break;
            case SymbolKind.Clutch:
                var clutch = solution.Network.Clutches[symbol.Element];
                Clutch(symbol, clutch.Chamber >= 0 && solution.PressureAt(clutch.Chamber) > 1 && solution.PressureAt(clutch.Chamber) > clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber));
                break;
            case SymbolKind.Metal:
                Metal(symbol);
                break;
            default:
                break;
        }
    }

    /// <summary>A tank, the sump, hanging from a point.</summary>
    public void Tank(double x, double y, string style = "thin") => svg.Line($"M{x:0.#} {y:0.#}v5M{x - 6:0.#} {y + 3:0.#}v5h12v-5", style);

    private static double MiddleX(Symbol symbol) => symbol.FigureX + (symbol.FigureWidth / 2);

    private static double MiddleY(Symbol symbol) => symbol.FigureY + (symbol.FigureHeight / 2);

    /// <summary>From every port straight in, then to the middle.</summary>
    private void Leads(Symbol symbol, double gap)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        foreach (var port in symbol.Ports)
        {
            var end = port.OnLeft ? x - gap : x + gap;
            var edge = port.OnLeft ? Math.Min(port.X + 4, end) : Math.Max(port.X - 4, end);
            svg.Line($"M{port.X:0.#} {port.Y:0.#}H{edge:0.#}L{end:0.#} {y:0.#}", "ink");
        }
    }

    private void Pump(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol) - 4, MiddleY(symbol));
        foreach (var port in symbol.Ports) svg.Line($"M{port.X:0.#} {port.Y:0.#}H{x + 15:0.#}", "ink");
        svg.Circle(x, y, 15, "fig");
        svg.Line($"M{x + 15:0.#} {y:0.#}l-10 -6v12z", "solid");
    }

    private void Restriction(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        Leads(symbol, 0);
        if (symbol.Drains)
        {
            svg.Line($"M{x:0.#} {y:0.#}h11", "ink");
            Tank(x + 11, y);
        }

        svg.Line($"M{x - 7:0.#} {y - 8:0.#}Q{x:0.#} {y - 1:0.#} {x + 7:0.#} {y - 8:0.#}M{x - 7:0.#} {y + 8:0.#}Q{x:0.#} {y + 1:0.#} {x + 7:0.#} {y + 8:0.#}", symbol.Kind == SymbolKind.Leak ? "pilot" : "ink");
    }

    /// <summary>A housing with the ball in it: on the seat that it closes, or free.</summary>
    private void Ball(Symbol symbol, int closed)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        var (left, right) = (symbol.FigureX + 9, symbol.FigureX + symbol.FigureWidth - 9);
        svg.Box(left, symbol.FigureY + 1, right - left, symbol.FigureHeight - 2, "fig", round: 4);
        var (ballX, ballY) = (x, y);
        foreach (var port in symbol.Ports)
        {
            var wall = port.OnLeft ? left : right;
            var inward = port.OnLeft ? 1 : -1;
            svg.Line($"M{port.X:0.#} {port.Y:0.#}H{wall:0.#}", "ink");
            if (!port.Role.StartsWith("seat", StringComparison.Ordinal)) continue;
            svg.Line($"M{wall + (8 * inward):0.#} {port.Y - 7:0.#}L{wall:0.#} {port.Y - 2:0.#}M{wall:0.#} {port.Y + 2:0.#}L{wall + (8 * inward):0.#} {port.Y + 7:0.#}", "ink");
            if (port.Role == FormattableString.Invariant($"seat {closed}")) (ballX, ballY) = (wall + (7 * inward), port.Y);
        }

        svg.Circle(ballX, ballY, 5, "globe");
        if (symbol.Drains) Tank(right + 4, y + 4);
    }

    /// <summary>Both positions as boxes, moved above rest; lines lead to the box that is in use.</summary>
    private void Valve(Symbol symbol, int active)
    {
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

    private void Lever(Symbol symbol, int active)
    {
        var cells = symbol.Positions.Length;
        var width = symbol.FigureWidth / Math.Max(1, cells);
        for (var i = 0; i < cells; i++)
        {
            svg.Box(symbol.FigureX + (i * width), symbol.FigureY, width, SymbolSizes.Positions, i == active ? "active" : "idlefig");
            if (lettered) svg.Text(symbol.FigureX + ((i + 0.5) * width), symbol.FigureY + 12, SymbolSizes.LeverLabel(solution.Network.LeverPositions[i]), i == active ? "name mid" : "faint mid");
        }

        var (left, right) = (symbol.FigureX + Inset, symbol.FigureX + symbol.FigureWidth - Inset);
        var top = symbol.FigureY + SymbolSizes.Positions;
        var height = symbol.FigureHeight - (2 * SymbolSizes.Positions);
        svg.Box(left, top, right - left, height, "active");
        if (active >= 0) Joinings(symbol, active, left, right, top, height, "ink");
        foreach (var port in symbol.Ports)
            svg.Line($"M{port.X:0.#} {port.Y:0.#}L{(port.OnLeft ? left : right):0.#} {Within(symbol, port, top, height):0.#}", "ink");
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

    private void PressureValve(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        svg.Box(x - 15, y - 15, 30, 30, "fig");
        Feeds(symbol, x - 15, x + 15, y);
        // A spilling valve stands shut beside its line, a reducing one open in it.
        var offset = symbol.Kind == SymbolKind.Spilling ? 5 : 0;
        svg.Line($"M{x - 15:0.#} {y - offset:0.#}H{x + 13:0.#}m-6 -3l6 3l-6 3", "ink");
        svg.Line($"M{x - 10:0.#} {y + 15:0.#}l3 5l4 -5l4 5l4 -5l4 5l3 -5", "thin");
        svg.Line(symbol.Kind == SymbolKind.Spilling ? (FormattableString)$"M{x - 19:0.#} {y:0.#}V{y - 19:0.#}H{x:0.#}V{y - 15:0.#}" : (FormattableString)$"M{x + 19:0.#} {y:0.#}V{y - 19:0.#}H{x:0.#}V{y - 15:0.#}", "pilot");
        if (symbol.Drains) Tank(x + 18, y + 12);
    }

    private void Solenoid(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol) - 6, MiddleY(symbol));
        svg.Box(x - 15, y - 15, 30, 30, "fig");
        Feeds(symbol, x - 15, x + 15, y);
        svg.Box(x + 15, y - 21, 16, 10, "fig");
        svg.Line($"M{x + 19:0.#} {y - 11:0.#}l8 -10", "thin");
        if (symbol.Kind == SymbolKind.PressureSolenoid) svg.Line($"M{x + 14:0.#} {y - 8:0.#}L{x + 32:0.#} {y - 24:0.#}m-1 4l1 -4l-4 1", "thin");
        svg.Line($"M{x - 10:0.#} {y + 15:0.#}l3 5l4 -5l4 5l4 -5l4 5l3 -5", "thin");
        var fed = symbol.Kind == SymbolKind.Switch ? solution.Inputs.Fed[symbol.Element] : solution.Modes[symbol.Element] != RegulatorModes.Relieving;
        if (fed) svg.Line($"M{x - 13:0.#} {y:0.#}H{x + 13:0.#}m-6 -3l6 3l-6 3", "ink");
        else svg.Line($"M{x + 13:0.#} {y - 4:0.#}H{x:0.#}V{y + 13:0.#}m-3 -6l3 6l3 -6M{x - 13:0.#} {y:0.#}h5m0 -4v8", "ink");
        if (symbol.Drains) Tank(x + 19, y + 12);
    }

    private void Feeds(Symbol symbol, double left, double right, double y)
    {
        foreach (var port in symbol.Ports)
        {
            var wall = port.OnLeft ? left : right;
            var at = Math.Clamp(port.Y, y - 12, y + 12);
            svg.Line($"M{port.X:0.#} {port.Y:0.#}L{wall:0.#} {at:0.#}", "ink");
        }
    }

    private void Accumulator(Symbol symbol, bool filled)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        foreach (var port in symbol.Ports) svg.Line($"M{port.X:0.#} {port.Y:0.#}L{x:0.#} {y + 19:0.#}", "ink");
        svg.Box(x - 9, y - 19, 18, 38, "fig", round: 9);
        var piston = filled ? y - 6 : y + 8;
        svg.Line($"M{x - 9:0.#} {piston:0.#}h18", "ink");
        var rise = (piston - (y - 17)) / 4;
        svg.Line($"M{x:0.#} {piston:0.#}l-5 {-rise:0.##}l10 {-rise:0.##}l-10 {-rise:0.##}l5 {-rise:0.##}", "thin");
    }

    /// <summary>A single-acting cylinder with a spring; the piston stands out where the clutch is filled.</summary>
    private void Clutch(Symbol symbol, bool filled)
    {
        var (x, y) = (symbol.FigureX + 8, MiddleY(symbol));
        foreach (var port in symbol.Ports)
        {
            var into = port.Role == "release" ? x + 34 : x;
            if (port.Role == "release") svg.Line($"M{port.X:0.#} {port.Y:0.#}H{x - 4:0.#}V{y + 14:0.#}H{into:0.#}v-3", "ink");
            else svg.Line($"M{port.X:0.#} {port.Y:0.#}L{into:0.#} {Math.Clamp(port.Y, y - 8, y + 8):0.#}", "ink");
        }

        svg.Box(x, y - 11, 38, 22, "fig");
        var piston = x + (filled ? 24 : 8);
        svg.Box(piston, y - 11, 4, 22, "solid");
        svg.Line($"M{piston + 4:0.#} {y:0.#}H{x + (filled ? 54 : 44):0.#}", "ink");
        var step = (x + 38 - (piston + 4)) / 5;
        svg.Line($"M{piston + 4:0.#} {y + 7:0.#}l{step:0.##} -14l{step:0.##} 14l{step:0.##} -14l{step:0.##} 14l{step:0.##} -14", "thin");
        if (filled) svg.Line($"M{x + 54:0.#} {y - 9:0.#}v18", "ink");
    }

    private void Metal(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        Leads(symbol, 5);
        svg.Box(x - 4, y - 10, 8, 20, "solid");
    }
}
