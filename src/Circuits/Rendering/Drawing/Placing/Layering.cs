namespace Circuits.Rendering.Drawing.Placing;

/// <summary>Puts symbols into layers, from supply on the left to clutches on the right; a line always joins two layers.</summary>
internal static class Layering
{
    private const int Rounds = 12;

    /// <summary>Sets the layer of every symbol; the lowest is 0.</summary>
    public static void Assign(Diagram diagram)
    {
        var count = diagram.Symbols.Count;
        if (count == 0) return;
        var neighbours = new List<int>[count];
        for (var i = 0; i < count; i++) neighbours[i] = [];
        foreach (var wire in diagram.Wires)
        {
            neighbours[wire.A.Symbol.Index].Add(wire.B.Symbol.Index);
            neighbours[wire.B.Symbol.Index].Add(wire.A.Symbol.Index);
        }

        var order = Order(diagram, neighbours);
        var rank = new int[count];
        for (var i = 0; i < count; i++) rank[order[i]] = i;
        var before = neighbours.Select((list, i) => list.Where(other => rank[other] < rank[i]).ToArray()).ToArray();
        var after = neighbours.Select((list, i) => list.Where(other => rank[other] > rank[i]).ToArray()).ToArray();
        var layer = new int[count];
        foreach (var i in order)
        {
            foreach (var other in before[i]) layer[i] = Math.Max(layer[i], layer[other] + 1);
        }

        Tighten(order, before, after, layer);
        PutClutchesLast(diagram, layer);
        var used = layer.Distinct().Order().ToList();
        foreach (var symbol in diagram.Symbols) symbol.Layer = used.BinarySearch(layer[symbol.Index]);
    }

    /// <summary>
    /// From the pump outwards, nearest first, so that lines point away from supply. What the pump does not reach
    /// begins at what has most lines.
    /// </summary>
    private static List<int> Order(Diagram diagram, List<int>[] neighbours)
    {
        var order = new List<int>();
        var seen = new bool[neighbours.Length];
        var starts = diagram.Symbols.OrderBy(symbol => symbol.Kind == SymbolKind.Pump ? 0 : 1)
            .ThenBy(symbol => symbol.Kind == SymbolKind.Clutch ? 1 : 0).ThenByDescending(symbol => symbol.Ports.Count).ThenBy(symbol => symbol.Index);
        foreach (var start in starts)
        {
            if (seen[start.Index]) continue;
            seen[start.Index] = true;
            var next = order.Count;
            order.Add(start.Index);
            for (; next < order.Count; next++)
            {
                foreach (var other in neighbours[order[next]])
                {
                    if (seen[other]) continue;
                    seen[other] = true;
                    order.Add(other);
                }
            }
        }

        return order;
    }

    /// <summary>Moves each symbol, within what its lines allow, to where they are shortest together.</summary>
    private static void Tighten(List<int> order, int[][] before, int[][] after, int[] layer)
    {
        for (var round = 0; round < Rounds; round++)
        {
            var moved = false;
            foreach (var i in round % 2 == 0 ? Enumerable.Reverse(order) : order)
            {
                if (before[i].Length + after[i].Length == 0) continue;
                var least = before[i].Length == 0 ? int.MinValue : before[i].Max(other => layer[other]) + 1;
                var most = after[i].Length == 0 ? int.MaxValue : after[i].Min(other => layer[other]) - 1;
                var wanted = after[i].Length > before[i].Length || least == int.MinValue ? most
                    : after[i].Length < before[i].Length || most == int.MaxValue ? least : layer[i];
                if (wanted == layer[i]) continue;
                layer[i] = wanted;
                moved = true;
            }

            if (!moved) return;
        }
    }

    private static void PutClutchesLast(Diagram diagram, int[] layer)
    {
        var last = layer.Max();
        if (diagram.Symbols.Any(symbol => symbol.Kind != SymbolKind.Clutch && layer[symbol.Index] == last)) last++;
        foreach (var clutch in diagram.Symbols.Where(symbol => symbol.Kind == SymbolKind.Clutch)) layer[clutch.Index] = last;
    }
}
