using Circuits.Solving;

namespace Circuits.Rendering.Drawing;

/// <summary>
/// Draws the figures of symbols in the manner of ISO 1219-1: pump, restriction, non-return and shuttle valve, directional valve, pressure
/// valves, solenoid, accumulator, single-acting cylinder. All figures are drawn here and taken from nowhere.
/// </summary>
internal sealed partial class Figures(SvgWriter svg, GearSolution solution, bool lettered = true)
{
    private const double Inset = 13;

    /// <summary>Draws a symbol's figure.</summary>
    public void Draw(Symbol symbol)
    {
        Action<Symbol> draw = symbol.Kind switch
        {
            SymbolKind.Pump => Pump,
            SymbolKind.Passage => Nothing,
            SymbolKind.Meeting => Meeting,
            SymbolKind.Joined => Joined,
            SymbolKind.Orifice or SymbolKind.Leak => Restriction,
            SymbolKind.Ball => Ball,
            SymbolKind.Valve => Valve,
            SymbolKind.Lever => Lever,
            SymbolKind.Spilling or SymbolKind.Reducing or SymbolKind.Stuck => PressureValve,
            SymbolKind.Screen => Screen,
            SymbolKind.Switch or SymbolKind.PressureSolenoid => Solenoid,
            SymbolKind.Accumulator => Accumulator,
            SymbolKind.Clutch => Clutch,
            SymbolKind.Metal => Metal,
        };
        draw(symbol);

        // A passage is a frame with its lettering in it, which whoever letters it draws.
        static void Nothing(Symbol symbol)
        {
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

    private void Feeds(Symbol symbol, double left, double right, double y)
    {
        foreach (var port in symbol.Ports)
        {
            var wall = port.OnLeft ? left : right;
            var at = Math.Clamp(port.Y, y - 12, y + 12);
            svg.Line($"M{port.X:0.#} {port.Y:0.#}L{wall:0.#} {at:0.#}", "ink");
        }
    }

    private void Meeting(Symbol symbol) => svg.Box(symbol.FigureX + 1, symbol.FigureY + 1, symbol.FigureWidth - 2, symbol.FigureHeight - 2, "fig", round: 5);

    private void Joined(Symbol symbol)
    {
        Leads(symbol, 0);
        svg.Circle(MiddleX(symbol), MiddleY(symbol), 3, "solid");
    }

    private void Metal(Symbol symbol)
    {
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        Leads(symbol, 5);
        svg.Box(x - 4, y - 10, 8, 20, "solid");
    }
}
