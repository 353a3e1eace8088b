using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Regulators(Network network) => In(Turn.Regulators, () =>
    {
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            // A screen draws its bypass itself.
            var regulator = network.Regulators[i];
            if (regulator.Kind == RegulatorKind.Bypass) continue;
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
    });
}

internal sealed partial class Figures
{
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
}
