namespace Circuits.Rendering.Drawing.Placing;

/// <summary>
/// Heights of the spots of each layer: as near to where their lines would be straight as the order and the gaps allow. For one layer
/// that is least squares under an order, which pooling adjacent violators solves exactly; sweeps to and fro settle the layers among one another.
/// </summary>
internal static class Coordinates
{
    private const double SymbolGap = 16;
    private const double LineGap = 9;
    private const int Sweeps = 16;

    public static void Assign(LayerGraph graph)
    {
        foreach (var layer in graph.Layers) Stack(layer);
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            var both = sweep >= Sweeps / 2;
            for (var i = 0; i < graph.Layers.Count; i++)
            {
                var forwards = sweep % 2 == 0;
                Settle(graph.Layers[forwards ? i : graph.Layers.Count - 1 - i], both || forwards, both || !forwards);
            }
        }

        var top = graph.Layers.SelectMany(layer => layer).Select(spot => spot.Y).DefaultIfEmpty().Min();
        foreach (var spot in graph.Layers.SelectMany(layer => layer)) spot.Y -= top;
    }

    private static double Gap(Spot above, Spot below) => above.Symbol is null && below.Symbol is null ? LineGap : SymbolGap;

    private static void Stack(List<Spot> layer)
    {
        for (var i = 1; i < layer.Count; i++) layer[i].Y = layer[i - 1].Y + layer[i - 1].Height + Gap(layer[i - 1], layer[i]);
    }

    private static void Settle(List<Spot> layer, bool useLeft, bool useRight)
    {
        // With the least distance from the first taken off each, the order alone is left to be kept.
        var blocks = new List<(double Sum, double Weight, int First)>();
        var least = new double[layer.Count];
        for (var i = 0; i < layer.Count; i++)
        {
            if (i > 0) least[i] = least[i - 1] + layer[i - 1].Height + Gap(layer[i - 1], layer[i]);
            var (sum, weight) = Wanted(layer[i], useLeft, useRight);
            blocks.Add((sum - (weight * least[i]), weight, i));
            while (blocks.Count > 1 && blocks[^2].Sum / blocks[^2].Weight >= blocks[^1].Sum / blocks[^1].Weight)
            {
                blocks[^2] = (blocks[^2].Sum + blocks[^1].Sum, blocks[^2].Weight + blocks[^1].Weight, blocks[^2].First);
                blocks.RemoveAt(blocks.Count - 1);
            }
        }

        for (var k = 0; k < blocks.Count; k++)
        {
            var end = k + 1 < blocks.Count ? blocks[k + 1].First : layer.Count;
            for (var i = blocks[k].First; i < end; i++) layer[i].Y = Math.Round(blocks[k].Sum / blocks[k].Weight) + least[i];
        }
    }

    /// <summary>Where a spot's lines would have it, weighted: long lines are kept straight first.</summary>
    private static (double Sum, double Weight) Wanted(Spot spot, bool useLeft, bool useRight)
    {
        var (sum, weight) = (0.01 * spot.Y, 0.01);
        if (useLeft)
        {
            foreach (var piece in spot.Left) Add(piece, piece.FromY - piece.ToOffset);
        }

        if (useRight)
        {
            foreach (var piece in spot.Right) Add(piece, piece.ToY - piece.FromOffset);
        }

        return (sum, weight);

        void Add(Piece piece, double y)
        {
            var heavy = (piece.From.Symbol is null ? 1 : 0) + (piece.To.Symbol is null ? 1 : 0) switch { 0 => 1, 1 => 2, _ => 6 };
            sum += heavy * y;
            weight += heavy;
        }
    }
}
