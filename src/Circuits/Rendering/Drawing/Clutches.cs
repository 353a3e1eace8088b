using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Clutches(Network network) => In(Turn.Clutches, () =>
    {
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
    });
}

internal sealed partial class Figures
{
    /// <summary>A single-acting cylinder with a spring; the piston stands out where the clutch is filled.</summary>
    private void Clutch(Symbol symbol)
    {
        var clutch = solution.Network.Clutches[symbol.Element];
        var filled = clutch.Chamber >= 0 && solution.PressureAt(clutch.Chamber) > 1
            && solution.PressureAt(clutch.Chamber) > clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber);
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
}
