namespace Circuits.Rendering.Drawing.Placing;

/// <summary>Places the symbols of a diagram, whose sizes are known, and lays its lines.</summary>
internal static class Placer
{
    private const double Margin = 16;
    private const double Lead = 12;
    private const double TrackGap = 6;

    /// <summary>Sets where every symbol stands, the corners of every line, and the size of the whole.</summary>
    /// <param name="diagram">The diagram; layers are set.</param>
    /// <param name="top">Where its upper edge comes to stand.</param>
    public static void Place(Diagram diagram, double top)
    {
        foreach (var wire in diagram.Wires)
        {
            wire.Left.OnLeft = false;
            wire.Right.OnLeft = true;
        }

        var graph = LayerGraph.Of(diagram);
        CrossingReduction.Run(graph);
        SetPorts(graph);
        Coordinates.Assign(graph);
        var left = Margin;
        for (var i = 0; i < graph.Layers.Count; i++)
        {
            var width = graph.Layers[i].Max(spot => spot.Symbol?.Width ?? 0);
            foreach (var spot in graph.Layers[i])
            {
                spot.Y += top + Margin;
                if (spot.Symbol is not { } symbol) continue;
                symbol.X = left + ((width - symbol.Width) / 2);
                symbol.Y = spot.Y;
            }

            left += width;
            if (i == graph.Between.Count) break;
            left += Lead;
            // The next layer's heights must be final before tracks are chosen.
            foreach (var spot in graph.Layers[i + 1]) spot.Y += top + Margin;
            var tracks = Tracks.Assign(graph.Between[i]);
            foreach (var piece in graph.Between[i]) Bend(piece, left);
            foreach (var spot in graph.Layers[i + 1]) spot.Y -= top + Margin;
            left += (Math.Max(tracks, 1) * TrackGap) + Lead;
        }

        foreach (var wire in diagram.Wires)
        {
            wire.Corners.Insert(0, (wire.Left.X, wire.Left.Y));
            wire.Corners.Add((wire.Right.X, wire.Right.Y));
        }

        diagram.Width = left + Margin;
        diagram.Height = graph.Layers.SelectMany(layer => layer).Select(spot => spot.Y + spot.Height).DefaultIfEmpty(top).Max() + Margin;
    }

    private static void Bend(Piece piece, double left)
    {
        if (Math.Abs(piece.FromY - piece.ToY) < 0.5) return;
        var x = left + (piece.Track * TrackGap) + (TrackGap / 2);
        piece.Wire.Corners.Add((x, piece.FromY));
        piece.Wire.Corners.Add((x, piece.ToY));
    }

    /// <summary>Orders each symbol's ports as the lines there leave it, and spreads them over its figure.</summary>
    private static void SetPorts(LayerGraph graph)
    {
        foreach (var spot in graph.Layers.SelectMany(layer => layer))
        {
            if (spot.Symbol is not { } symbol) continue;
            Spread(symbol, [.. spot.Left.OrderBy(piece => piece.From.Rank).ThenBy(piece => piece.From.Symbol is null ? 0 : piece.Wire.Left.Offset).Select(piece => piece.Wire.Right)]);
            Spread(symbol, [.. spot.Right.OrderBy(piece => piece.To.Rank).Select(piece => piece.Wire.Left)]);
        }
    }

    private static void Spread(Symbol symbol, List<Port> ports)
    {
        var first = (symbol.RowsAbove * DiagramSizes.Row) + (symbol.FigureHeight / 2) - ((ports.Count - 1) * DiagramSizes.Pitch / 2);
        for (var i = 0; i < ports.Count; i++) ports[i].Offset = first + (i * DiagramSizes.Pitch);
    }
}
