using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    public void Lever(Network network) => In(Turn.Lever, () =>
    {
        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            if (revision.Lever.IsEmpty) continue;
            var positions = network.LeverPositions.Select(name => Joinings([.. revision.Lever.Where(lever => lever.Name == name).SelectMany(lever => lever.Ports)]));
            AddJoining(SymbolKind.Lever, $"{part.Name}.lever", 0, [.. positions]);
        }
    });
}

internal sealed partial class Figures
{
    private void Lever(Symbol symbol)
    {
        var active = solution.Inputs.Lever;
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
}
