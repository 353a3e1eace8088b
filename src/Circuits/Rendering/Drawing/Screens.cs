using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Screens(Network network) => In(Turn.Screens, () =>
    {
        for (var i = 0; i < network.Screens.Length; i++)
        {
            var screen = network.Screens[i];
            var mesh = network.Links.FirstOrDefault(link => link.Element == screen.Name);
            var symbol = Add(SymbolKind.Screen, screen.Name, i, mesh?.Detail);
            Connect(symbol, screen.From, "in", mesh?.Index);
            Connect(symbol, screen.To, "out", mesh?.Index);
        }
    });
}

internal sealed partial class Figures
{
    /// <summary>
    /// A square on its corner with a broken line across the flow; around it, where it has one, a non-return valve on a spring. Nothing across where
    /// the mesh is out.
    /// </summary>
    private void Screen(Symbol symbol)
    {
        var screen = solution.Network.Screens[symbol.Element];
        var (x, y) = (MiddleX(symbol), symbol.FigureY + (symbol.FigureHeight / 2));
        foreach (var port in symbol.Ports) svg.Line($"M{port.X:0.#} {port.Y:0.#}L{(port.OnLeft ? x - 12 : x + 12):0.#} {y:0.#}", "ink");
        svg.Line($"M{x - 12:0.#} {y:0.#}l12 -12l12 12l-12 12z", "ink");
        if (!screen.Source.IsOut) svg.Line($"M{x:0.#} {y - 12:0.#}v4m0 4v4m0 4v4m0 4v2", "thin");
        if (screen.Source.Bypass is null) return;

        // The seat lies towards the oil that comes, whichever side that is on.
        var top = y - 18;
        var ahead = symbol.Ports.Find(port => port.Role == "in") is { OnLeft: false } ? -1 : 1;
        svg.Line($"M{x - 16:0.#} {y:0.#}V{top:0.#}H{x - 5:0.#}M{x + 16:0.#} {y:0.#}V{top:0.#}H{x + 5:0.#}M{x - 16:0.#} {y:0.#}h4M{x + 12:0.#} {y:0.#}h4", "ink");
        svg.Line($"M{x + (ahead * 1):0.#} {top - 5:0.#}l{-4 * ahead:0.#} 5l{4 * ahead:0.#} 5", "ink");
        var lift = screen.Bypass >= 0 && solution.Modes[screen.Bypass] != RegulatorModes.Relieving ? 4 : 1;
        svg.Circle(x + (ahead * lift), top, 3, "globe");
    }
}
