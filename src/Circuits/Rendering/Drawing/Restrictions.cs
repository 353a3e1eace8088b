namespace Circuits.Rendering.Drawing;

internal sealed partial class Figures
{
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
}
