namespace Circuits.Rendering.Drawing.Placing;

/// <summary>
/// Orders the spots of each layer so that few lines cross: sweeps to and fro that put each spot at the mean place of its neighbours
/// (barycentre method of Sugiyama, Tagawa and Toda, 1981), each followed by exchanges of neighbours that save crossings.
/// </summary>
internal static class CrossingReduction
{
    private const int Sweeps = 24;

    /// <summary>Beyond this many pieces of lines, fewer starts and no exchanges within sweeps, so that a big unit is drawn in seconds.</summary>
    private const int Many = 6000;

    public static void Run(LayerGraph graph)
    {
        if (graph.Layers.Count < 2) return;
        var big = graph.Pieces.Count > Many;
        var best = long.MaxValue;
        List<Spot>[]? kept = null;
        for (var start = 0; start < (big ? 1 : 4) && best > 0; start++)
        {
            Begin(graph, start);
            var idle = 0;
            for (var sweep = 0; sweep < Sweeps && best > 0 && idle < (big ? 4 : Sweeps); sweep++)
            {
                Sweep(graph, forwards: sweep % 2 == 0, byMedian: start % 2 == 1);
                if (!big || sweep % 8 == 7) Exchange(graph, big ? 2 : 6);
                var crossings = graph.Crossings();
                idle++;
                if (crossings >= best) continue;
                idle = 0;
                best = crossings;
                kept = [.. graph.Layers.Select(layer => layer.ToList())];
            }
        }

        for (var i = 0; i < graph.Layers.Count; i++)
        {
            graph.Layers[i].Clear();
            graph.Layers[i].AddRange(kept![i]);
        }

        graph.Number();
    }

    /// <summary>A first order: as a walk from the left (or the right) meets the spots, branch by branch.</summary>
    private static void Begin(LayerGraph graph, int start)
    {
        var seen = new HashSet<Spot>();
        var roots = graph.Layers.SelectMany(layer => layer).OrderBy(spot => start >= 2 ? -spot.Layer : spot.Layer).ToList();
        foreach (var layer in graph.Layers) layer.Clear();
        foreach (var root in roots)
        {
            var stack = new Stack<Spot>([root]);
            while (stack.TryPop(out var spot))
            {
                if (!seen.Add(spot)) continue;
                graph.Layers[spot.Layer].Add(spot);
                foreach (var piece in spot.Left) stack.Push(piece.From);
                foreach (var piece in spot.Right) stack.Push(piece.To);
            }
        }

        graph.Number();
    }

    private static void Sweep(LayerGraph graph, bool forwards, bool byMedian)
    {
        for (var step = 1; step < graph.Layers.Count; step++)
        {
            var layer = graph.Layers[forwards ? step : graph.Layers.Count - 1 - step];
            var wanted = layer.Select(spot => Wanted(spot, forwards, byMedian)).ToArray();
            var order = Enumerable.Range(0, layer.Count).OrderBy(i => wanted[i]).Select(i => layer[i]).ToList();
            layer.Clear();
            layer.AddRange(order);
            for (var i = 0; i < layer.Count; i++) layer[i].Rank = i;
        }
    }

    private static double Wanted(Spot spot, bool forwards, bool byMedian)
    {
        var places = (forwards ? spot.Left.Select(piece => piece.From.Rank) : spot.Right.Select(piece => piece.To.Rank)).Order().ToList();
        if (places.Count == 0) return spot.Rank;
        return byMedian ? (places[(places.Count - 1) / 2] + places[places.Count / 2]) / 2.0 : places.Average();
    }

    /// <summary>Exchanges neighbours in a layer while that saves crossings.</summary>
    private static void Exchange(LayerGraph graph, int rounds)
    {
        for (var round = 0; round < rounds; round++)
        {
            var saved = false;
            foreach (var layer in graph.Layers)
            {
                for (var i = 0; i + 1 < layer.Count; i++)
                {
                    var (a, b) = (layer[i], layer[i + 1]);
                    if (Inversions(a, b) <= Inversions(b, a)) continue;
                    (layer[i], layer[i + 1]) = (b, a);
                    (a.Rank, b.Rank) = (i + 1, i);
                    saved = true;
                }
            }

            if (!saved) return;
        }
    }

    /// <summary>Crossings among the lines of two spots with the first above the second.</summary>
    private static int Inversions(Spot above, Spot below)
    {
        var sum = 0;
        foreach (var a in above.Left)
        {
            foreach (var b in below.Left) sum += a.From.Rank > b.From.Rank ? 1 : 0;
        }

        foreach (var a in above.Right)
        {
            foreach (var b in below.Right) sum += a.To.Rank > b.To.Rank ? 1 : 0;
        }

        return sum;
    }
}
