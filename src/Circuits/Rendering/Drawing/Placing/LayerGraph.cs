namespace Circuits.Rendering.Drawing.Placing;

/// <summary>A symbol in its layer, or the spot at which a line passes a layer between its ends.</summary>
internal sealed class Spot(Symbol? symbol, int layer)
{
    public Symbol? Symbol { get; } = symbol;

    public int Layer { get; } = layer;

    /// <summary>Its place in the layer, counted from above.</summary>
    public int Rank { get; set; }

    public double Y { get; set; }

    public double Height => Symbol?.Height ?? 6;

    public List<Piece> Left { get; } = [];

    public List<Piece> Right { get; } = [];
}

/// <summary>The piece of a line between two neighbouring layers.</summary>
internal sealed class Piece(Wire wire, Spot from, Spot to)
{
    public Wire Wire { get; } = wire;

    public Spot From { get; } = from;

    public Spot To { get; } = to;

    /// <summary>From the left spot's upper edge to where the piece leaves it.</summary>
    public double FromOffset => From.Symbol is null ? From.Height / 2 : Wire.Left.Offset;

    /// <summary>From the right spot's upper edge to where the piece enters it.</summary>
    public double ToOffset => To.Symbol is null ? To.Height / 2 : Wire.Right.Offset;

    public double FromY => From.Y + FromOffset;

    public double ToY => To.Y + ToOffset;

    /// <summary>Which of the upright tracks between the layers it takes.</summary>
    public int Track { get; set; }
}

/// <summary>A diagram in layers, lines cut at each layer that they pass.</summary>
internal sealed class LayerGraph
{
    private LayerGraph(List<List<Spot>> layers, List<Piece> pieces)
    {
        Layers = layers;
        Pieces = pieces;
        Between = [.. Enumerable.Range(0, Math.Max(0, layers.Count - 1)).Select(_ => new List<Piece>())];
        foreach (var piece in pieces) Between[piece.From.Layer].Add(piece);
    }

    public List<List<Spot>> Layers { get; }

    public List<Piece> Pieces { get; }

    /// <summary>The pieces between each layer and the next.</summary>
    public List<List<Piece>> Between { get; }

    public static LayerGraph Of(Diagram diagram)
    {
        var count = diagram.Symbols.Count == 0 ? 0 : diagram.Symbols.Max(symbol => symbol.Layer) + 1;
        var layers = Enumerable.Range(0, count).Select(_ => new List<Spot>()).ToList();
        var spots = diagram.Symbols.Select(symbol => new Spot(symbol, symbol.Layer)).ToArray();
        foreach (var spot in spots) layers[spot.Layer].Add(spot);
        var pieces = new List<Piece>();
        foreach (var wire in diagram.Wires)
        {
            var at = spots[wire.Left.Symbol.Index];
            var end = spots[wire.Right.Symbol.Index];
            while (at.Layer + 1 < end.Layer)
            {
                var next = new Spot(null, at.Layer + 1);
                layers[next.Layer].Add(next);
                Join(at, next);
                at = next;
            }

            Join(at, end);

            void Join(Spot from, Spot to)
            {
                var piece = new Piece(wire, from, to);
                from.Right.Add(piece);
                to.Left.Add(piece);
                pieces.Add(piece);
            }
        }

        var graph = new LayerGraph(layers, pieces);
        graph.Number();
        return graph;
    }

    /// <summary>Gives every spot its place in its layer.</summary>
    public void Number()
    {
        foreach (var layer in Layers)
        {
            for (var i = 0; i < layer.Count; i++) layer[i].Rank = i;
        }
    }

    /// <summary>How many pairs of lines cross.</summary>
    public long Crossings()
    {
        long sum = 0;
        for (var i = 0; i < Between.Count; i++) sum += Crossings(Between[i], Layers[i + 1].Count);
        return sum;
    }

    private static long Crossings(List<Piece> pieces, int places)
    {
        // Pieces in the order of their left ends; each counts those before it that end further down.
        var order = pieces.OrderBy(piece => piece.From.Rank).ThenBy(piece => piece.To.Rank).ToList();
        var tree = new int[places + 1];
        long sum = 0;
        for (var i = 0; i < order.Count; i++)
        {
            sum += i;
            for (var k = order[i].To.Rank + 1; k > 0; k -= k & -k) sum -= tree[k];
            for (var k = order[i].To.Rank + 1; k <= places; k += k & -k) tree[k]++;
        }

        return sum;
    }
}
