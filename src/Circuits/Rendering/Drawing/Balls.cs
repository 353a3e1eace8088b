using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Balls(Network network) => In(Turn.Balls, () =>
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
    });
}

internal sealed partial class Figures
{
    /// <summary>A housing with the ball in it: on the seat that it closes, or free.</summary>
    private void Ball(Symbol symbol)
    {
        var closed = solution.Balls[symbol.Element];
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
}
