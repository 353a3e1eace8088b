using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Accumulators(Network network) => In(Turn.Accumulators, () =>
    {
        for (var i = 0; i < network.Accumulators.Length; i++)
            Connect(Add(SymbolKind.Accumulator, network.Accumulators[i].Name, i), network.Accumulators[i].Node);
    });
}

internal sealed partial class Figures
{
    private void Accumulator(Symbol symbol)
    {
        var filled = solution.PressureAt(solution.Network.Accumulators[symbol.Element].Node) > 0;
        var (x, y) = (MiddleX(symbol), MiddleY(symbol));
        foreach (var port in symbol.Ports) svg.Line($"M{port.X:0.#} {port.Y:0.#}L{x:0.#} {y + 19:0.#}", "ink");
        svg.Box(x - 9, y - 19, 18, 38, "fig", round: 9);
        var piston = filled ? y - 6 : y + 8;
        svg.Line($"M{x - 9:0.#} {piston:0.#}h18", "ink");
        var rise = (piston - (y - 17)) / 4;
        svg.Line($"M{x:0.#} {piston:0.#}l-5 {-rise:0.##}l10 {-rise:0.##}l-10 {-rise:0.##}l5 {-rise:0.##}", "thin");
    }
}
