using Circuits.Networks;
using CsCheck;
using Circuits.Tests.Properties;
using Xunit;

namespace Circuits.Tests.Networks;

/// <summary>The widest way against the Floyd-Warshall scheme for bottlenecks (any textbook on algorithms; from memory), on random graphs.</summary>
public class WidestWaysTests
{
    private static readonly Gen<(int Nodes, Piece[] Pieces)> Graphs =
        from nodes in Gen.Int[1, 9]
        from pieces in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], Gen.OneOf(Gen.Double[0.1, 5], Gen.Int[1, 3].Select(width => (double)width), Gen.Const(double.PositiveInfinity))).Array[0, 24]
        select (nodes, pieces.Select((piece, i) => new Piece(100 + i, piece.Item1, piece.Item2, piece.Item3)).ToArray());

    [Fact]
    public void The_narrowest_piece_of_each_way_is_as_wide_as_can_be()
    {
        // One after the other with the same work arrays, as gears ask.
        var ways = new WidestWays();
        Property.ForAll(Graphs, 2000, graph => Fault(ways, graph.Nodes, graph.Pieces), _ => [], graph => string.Join(", ", graph.Pieces));
    }

    private static string? Fault(WidestWays ways, int nodes, Piece[] pieces)
    {
        var widest = Bottlenecks(nodes, pieces);
        for (var start = 0; start < nodes; start++)
        {
            ways.Search(nodes, start, pieces);
            for (var node = 0; node < nodes; node++)
            {
                if (ways.Reaches(node) != (widest[start, node] > 0)) return $"reaches: {start} to {node}";
                if (!ways.Reaches(node)) continue;
                var (at, width, steps) = (node, double.PositiveInfinity, 0);
                while (ways.Into(at) is { } piece)
                {
                    if (piece.To != at || pieces[piece.Number - 100] != piece) return $"piece: {piece} on the way from {start} to {node}";
                    (at, width) = (piece.From, Math.Min(width, piece.Width));
                    if (++steps > nodes) return $"goes round: {start} to {node}";
                }

                if (at != start) return $"begins elsewhere: {start} to {node}";
                if (width != widest[start, node]) return $"width: {width} from {start} to {node}, not {widest[start, node]}";
            }
        }

        return null;
    }

    private static double[,] Bottlenecks(int nodes, Piece[] pieces)
    {
        var widest = new double[nodes, nodes];
        for (var node = 0; node < nodes; node++) widest[node, node] = double.PositiveInfinity;
        foreach (var piece in pieces) widest[piece.From, piece.To] = Math.Max(widest[piece.From, piece.To], piece.Width);
        for (var through = 0; through < nodes; through++)
        {
            for (var from = 0; from < nodes; from++)
            {
                for (var to = 0; to < nodes; to++) widest[from, to] = Math.Max(widest[from, to], Math.Min(widest[from, through], widest[through, to]));
            }
        }

        return widest;
    }
}
