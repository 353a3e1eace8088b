namespace Circuits.Rendering.Drawing;

/// <summary>How much room each symbol needs, so that whatever is lettered in any gear has its own.</summary>
internal static class SymbolSizes
{
    /// <summary>The pilot line before a row that tells of a signal.</summary>
    public const double Pilot = 22;

    /// <summary>Height of the row of a manual valve's positions.</summary>
    public const double Positions = 16;

    private const double Pad = 4;

    /// <summary>Sets the sizes of every symbol; layers are set.</summary>
    public static void Measure(Diagram diagram, IReadOnlyList<Lettering> letterings)
    {
        foreach (var symbol in diagram.Symbols)
        {
            var ports = Ports(diagram, symbol);
            var above = letterings.Select(lettering => lettering.Above(symbol).ToList()).ToList();
            var below = letterings.Select(lettering => lettering.Below(symbol).ToList()).ToList();
            symbol.RowsAbove = above.Max(rows => rows.Count);
            symbol.RowsBelow = below.Max(rows => rows.Count);
            (symbol.FigureWidth, symbol.FigureHeight) = Figure(diagram, symbol, (ports * DiagramSizes.Pitch) + 4);
            var text = above.Concat(below).SelectMany(rows => rows).Select(Width).DefaultIfEmpty().Max();
            if (symbol.Kind == SymbolKind.Passage)
            {
                // Its lettering stands within.
                symbol.FigureWidth = Math.Max(60, text + DiagramSizes.Band + (2 * Pad) + 2);
                symbol.FigureHeight = Math.Max((ports * DiagramSizes.Pitch) + 4, (symbol.RowsBelow * DiagramSizes.Row) + 7);
                symbol.RowsBelow = 0;
                (symbol.Width, symbol.Height) = (symbol.FigureWidth, symbol.FigureHeight);
                continue;
            }

            symbol.Width = Math.Max(symbol.FigureWidth, text + (2 * Pad));
            symbol.Height = symbol.FigureHeight + ((symbol.RowsAbove + symbol.RowsBelow) * DiagramSizes.Row) + 2;
        }
    }

    /// <summary>What is lettered in the cell of a manual valve's position.</summary>
    public static string LeverLabel(string position) => DrawnText.Short(position, 5);

    private static double Width(LetteredRow row) =>
        DrawnText.Width(row.Text, DiagramSizes.Type, row.Style is "name" or "alarm" or "other") + (row.Signal >= 0 ? Pilot : 0);

    /// <summary>The lines on the side that has more of them.</summary>
    private static int Ports(Diagram diagram, Symbol symbol)
    {
        var left = symbol.Ports.Count(port => port.OnLeft);
        return Math.Max(left, symbol.Ports.Count - left);
    }

    private static (double Width, double Height) Figure(Diagram diagram, Symbol symbol, double ports) => symbol.Kind switch
    {
        SymbolKind.Pump => (40, Math.Max(40, ports)),
        SymbolKind.Meeting => (12, Math.Max(16, ports)),
        SymbolKind.Joined => (16, Math.Max(12, ports)),
        SymbolKind.Orifice or SymbolKind.Leak => (34, Math.Max(18, ports)),
        SymbolKind.Ball => (44, Math.Max(30, ports)),
        SymbolKind.Valve => (74, 2 * Math.Max(26, ports)),
        SymbolKind.Lever => (Math.Max(74, symbol.Positions.Length * diagram.Network.LeverPositions.Max(name => Math.Max(18, DrawnText.Width(LeverLabel(name), DiagramSizes.Type, bold: true) + 4))), Positions + Math.Max(30, ports) + Positions),
        SymbolKind.Spilling or SymbolKind.Reducing or SymbolKind.Stuck => (56, Math.Max(44, ports)),
        SymbolKind.Screen => (44, Math.Max(48, ports)),
        SymbolKind.Switch or SymbolKind.PressureSolenoid => (66, Math.Max(44, ports)),
        SymbolKind.Accumulator => (30, Math.Max(40, ports)),
        SymbolKind.Clutch => (64, Math.Max(36, ports)),
        SymbolKind.Passage or SymbolKind.Metal => (26, Math.Max(22, ports)),
    };
}
