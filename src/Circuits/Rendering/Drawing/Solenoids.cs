using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    /// <summary>Those that switch; those that hold a pressure are among the regulators.</summary>
    public void Solenoids(Network network) => In(Turn.Solenoids, () =>
    {
        for (var i = 0; i < network.Switches.Length; i++)
        {
            var solenoid = network.Switches[i].Source;
            var symbol = Add(SymbolKind.Switch, network.Switches[i].Name, i);
            Connect(symbol, network.FindNode(solenoid.Feed.Name), "in");
            Connect(symbol, network.FindNode(solenoid.Out.Name), "out");
            Connect(symbol, network.FindNode(solenoid.To.Name), "drain");
        }
    });
}

internal sealed partial class Figures
{
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
}
