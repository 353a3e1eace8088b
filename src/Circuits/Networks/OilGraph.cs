using System.Diagnostics.CodeAnalysis;
using QuikGraph;
using QuikGraph.Algorithms.Observers;
using QuikGraph.Algorithms.ShortestPath;

namespace Circuits.Networks;

/// <summary>One step of a way through the network.</summary>
/// <param name="From">The node it leaves.</param>
/// <param name="To">The node it enters.</param>
/// <param name="Link">The link it takes.</param>
public readonly record struct Step(int From, int To, Link Link);

/// <summary>Graph queries over a network; everything that asks a graph library stands here.</summary>
public static class OilGraph
{
    /// <summary>The cheapest way from a node to every node that has one.</summary>
    /// <param name="network">The network.</param>
    /// <param name="start">Where the way begins.</param>
    /// <param name="cost">Cost of a step, above zero; infinite where there is no way. The third argument is the node entered.</param>
    /// <returns>A function from a node to the steps that lead there; null where none do, empty for the start itself.</returns>
    public static Func<int, IReadOnlyList<Step>?> Cheapest(Network network, int start, Func<Link, int, int, double> cost)
    {
        var graph = Graph(network, (link, from, to) => double.IsFinite(cost(link, from, to)));
        var search = new DijkstraShortestPathAlgorithm<int, Edge>(graph, edge => cost(edge.Piece.Link, edge.Source, edge.Target));
        return Run(graph, search, start);
    }

    /// <summary>Every node that steps lead to from a node, itself included.</summary>
    /// <param name="network">The network.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="passes">Whether oil passes a link from one node to another.</param>
    public static HashSet<int> Reached(Network network, int start, Func<Link, int, int, bool> passes)
    {
        var ways = Cheapest(network, start, (link, from, to) => passes(link, from, to) ? 1 : double.PositiveInfinity);
        return [.. network.Nodes.Select(node => node.Index).Where(node => ways(node) is not null)];
    }

    private static AdjacencyGraph<int, Edge> Graph(Network network, Func<Link, int, int, bool> passes)
    {
        var graph = new AdjacencyGraph<int, Edge>(allowParallelEdges: true, network.Nodes.Length);
        graph.AddVertexRange(network.Nodes.Select(node => node.Index));
        foreach (var link in network.Links)
        {
            if (passes(link, link.A, link.B)) graph.AddEdge(EdgeOf(link.A, link.B, link));
            if (passes(link, link.B, link.A)) graph.AddEdge(EdgeOf(link.B, link.A, link));
        }

        return graph;
    }

    private static Edge EdgeOf(int from, int to, Link link) => new(from, to, new Step(from, to, link));

    // The search looks its dictionaries' indexers up by name, so a trimmed program must keep them.
    [DynamicDependency(DynamicallyAccessedMemberTypes.PublicProperties, typeof(Dictionary<int, double>))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.PublicProperties, typeof(Dictionary<int, GraphColor>))]
    private static Func<int, IReadOnlyList<Step>?> Run(AdjacencyGraph<int, Edge> graph, DijkstraShortestPathAlgorithm<int, Edge> search, int start)
    {
        var predecessors = new VertexPredecessorRecorderObserver<int, Edge>();
        using (predecessors.Attach(search)) search.Compute(start);
        var into = predecessors.VerticesPredecessors;
        return node =>
        {
            if (node == start) return [];
            if (!graph.ContainsVertex(node) || !into.ContainsKey(node)) return null;
            var way = new List<Step>();
            for (var at = node; at != start; at = into[at].Source) way.Add(into[at].Piece);
            way.Reverse();
            return way;
        };
    }

    private sealed class Edge(int source, int target, Step piece) : IEdge<int>
    {
        public int Source { get; } = source;

        public int Target { get; } = target;

        public Step Piece { get; } = piece;
    }
}
