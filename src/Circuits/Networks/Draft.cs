using Circuits.Findings;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A link while the network is being drafted; its ends may still change.</summary>
internal sealed class Edge
{
    public required LinkKind Kind { get; init; }

    public required int A { get; set; }

    public required int B { get; set; }

    public required double Area { get; set; }

    public Gate Gate { get; set; } = Gate.Open;

    public required string Element { get; init; }

    public required string Part { get; init; }

    public required string Revision { get; init; }

    public required Phrase Detail { get; init; }

    public required Place Place { get; init; }

    public Shape? Shape { get; init; }

    public int Other(int node) => node == A ? B : A;

    public Link ToLink(int index, NewNumbers renumbered) => new(
        index, Gate.Kind == GateKind.Ball ? LinkKind.Seat : Kind, renumbered[A], renumbered[B], Area, Gate, Element, Part, Revision,
        Detail, Place, Shape);
}

/// <summary>The numbers of the nodes that are kept; what is not there (-1) stays so.</summary>
internal sealed class NewNumbers
{
    private readonly int[] numbers;

    public NewNumbers(int nodes, List<int> kept)
    {
        numbers = new int[nodes];
        Array.Fill(numbers, -1);
        for (var i = 0; i < kept.Count; i++) numbers[kept[i]] = i;
    }

    public int this[int node] => node < 0 ? -1 : numbers[node];
}

/// <summary>How many edges a node touches, and the two where it is two; the newer one is the second.</summary>
internal struct Touching
{
    public int Count { get; private set; }

    public int First { get; private set; }

    public int Second { get; private set; }

    public void Add(int edge)
    {
        if (Count == 0) First = edge;
        else Second = edge;
        Count++;
    }

    /// <summary>Puts an edge in the place of either of two others, as the newer one.</summary>
    public void Replace(int one, int other, int with)
    {
        if (First == one || First == other) (First, Second) = (Second, with);
        else if (Second == one || Second == other) Second = with;
    }
}

/// <summary>The network while it is being drafted.</summary>
internal sealed partial class Draft
{
    public Draft(Assembly assembly)
    {
        Assembly = assembly;
        Parts = [.. assembly.Unit.Parts.Select((part, index) => (part, assembly.Revisions[index]))];
        var passages = 0;
        foreach (var revision in assembly.Revisions) passages += revision.Passages.Length;
        Passages = new(passages);
        Nodes = new(2 * passages);
        Edges = new(3 * passages);
    }

    public Assembly Assembly { get; }

    /// <summary>Whether links that never open are left out.</summary>
    public bool SkipsMetal { get; init; }

    /// <summary>Nodes that were made for other assemblies, or null.</summary>
    public NodeStock? Stock { get; init; }

    public List<(Part Part, Revision Revision)> Parts { get; }

    public List<Node> Nodes { get; }

    public List<Edge> Edges { get; }

    public Dictionary<PassageName, int> Passages { get; }

    public List<DraftedJoint> Joints { get; } = [];

    public List<Finding> Findings { get; } = [];

    public List<Assumption> Assumptions { get; } = [];

    public int AddNode(NodeKind kind, string name, string? circuit, Place place)
    {
        Nodes.Add(new Node(Nodes.Count, kind, name, circuit, place));
        return Nodes.Count - 1;
    }

    /// <summary>Adds several nodes of one thing, the same ones as for another assembly where it has them under the same numbers.</summary>
    /// <param name="owner">What they are of.</param>
    /// <param name="count">How many there are.</param>
    /// <param name="make">Makes one, from its number in the network and among these.</param>
    public void AddNodes(object owner, int count, Func<int, int, Node> make)
    {
        var first = Nodes.Count;
        if (Stock?.Find(owner, first) is { } known)
        {
            Nodes.AddRange(known);
            return;
        }

        var nodes = new Node[count];
        for (var i = 0; i < count; i++) nodes[i] = make(first + i, i);
        Nodes.AddRange(nodes);
        Stock?.Keep(owner, nodes);
    }

    /// <summary>What to say of a size, for whoever asks through what oil goes; left out together with the metal.</summary>
    public Phrase Words(Shape? shape) => SkipsMetal ? Phrase.Empty : SizeText.Of(shape);

    public void Assume(PhraseBuilder text, Place place) => Assume(text.ToPhrase(), place);

    public void Assume(Phrase text, Place place) => Assumptions.Add(new Assumption(text, place));

    public void AddBlank(Blank blank)
    {
        if (SkipsMetal || !Passages.TryGetValue(blank.A, out var a) || !Passages.TryGetValue(blank.B, out var b)) return;
        Edges.Add(new Edge
        {
            Kind = LinkKind.Metal,
            A = a,
            B = b,
            Area = 0,
            Gate = Gate.Shut,
            Element = blank.Element,
            Part = blank.Part,
            Revision = blank.Revision,
            Detail = blank.Reason,
            Place = blank.Place,
        });
    }

    /// <summary>
    /// An opening with two contacts is one orifice, so its node goes; through several sheets the areas then act as
    /// (sum of 1/A^2)^(-1/2), since each contact stands for half of its opening's resistance.
    /// </summary>
    public void MergePassThrough()
    {
        var touching = new Touching[Nodes.Count];
        for (var edge = 0; edge < Edges.Count; edge++)
        {
            touching[Edges[edge].A].Add(edge);
            touching[Edges[edge].B].Add(edge);
        }

        var gone = new bool[Edges.Count];
        foreach (var node in Nodes)
        {
            if (node.Kind != NodeKind.Opening || touching[node.Index] is not { Count: 2, First: var first, Second: var second }) continue;
            if (Edges[first].Gate.Kind != GateKind.Open && Edges[second].Gate.Kind != GateKind.Open) continue;
            if (Edges[first].Other(node.Index) == Edges[second].Other(node.Index)) continue;
            var merged = InSeries(Edges[first], Edges[second], node.Index);
            Edges[first] = merged;
            gone[second] = true;
            touching[merged.A].Replace(first, second, first);
            touching[merged.B].Replace(first, second, first);
        }

        var kept = 0;
        for (var edge = 0; edge < Edges.Count; edge++)
        {
            if (!gone[edge]) Edges[kept++] = Edges[edge];
        }

        Edges.RemoveRange(kept, Edges.Count - kept);
    }

    /// <summary>An opening that touches one thing only leads nowhere.</summary>
    public void DropDeadOpenings()
    {
        while (true)
        {
            var count = new int[Nodes.Count];
            foreach (var edge in Edges)
            {
                count[edge.A]++;
                count[edge.B]++;
            }

            var removed = Edges.RemoveAll(edge => IsDead(edge.A) || IsDead(edge.B));
            if (removed == 0) return;

            bool IsDead(int node) => Nodes[node].Kind == NodeKind.Opening && count[node] < 2;
        }
    }

    /// <summary>A seat that leads nowhere, or that another ball closes, is none; those that are left are counted anew.</summary>
    public void DropDeadSeats()
    {
        var numbers = new int[Balls.Count][];
        for (var ball = 0; ball < numbers.Length; ball++)
        {
            numbers[ball] = new int[Balls[ball].SeatCount];
            Array.Fill(numbers[ball], -1);
        }

        foreach (var edge in Edges)
        {
            if (edge.Gate.Kind == GateKind.Ball) numbers[edge.Gate.Element][edge.Gate.Position] = 0;
        }

        for (var ball = 0; ball < numbers.Length; ball++)
        {
            var left = 0;
            foreach (ref var number in numbers[ball].AsSpan())
            {
                if (number == 0) number = left++;
            }

            Balls[ball].SeatCount = left;
        }

        foreach (var edge in Edges)
        {
            if (edge.Gate.Kind == GateKind.Ball) edge.Gate = edge.Gate with { Position = numbers[edge.Gate.Element][edge.Gate.Position] };
        }
    }

    public List<int> KeptNodes()
    {
        var used = new bool[Nodes.Count];
        foreach (var edge in Edges) used[edge.A] = used[edge.B] = true;
        return [.. Nodes.Where(node => node.Kind != NodeKind.Opening || used[node.Index]).Select(node => node.Index)];
    }

    /// <summary>Keeps the direction of a seat, pocket side first, and the name of the narrower of the two.</summary>
    private static Edge InSeries(Edge first, Edge second, int middle)
    {
        var gated = second.Gate.Kind != GateKind.Open ? second : first;
        var plain = ReferenceEquals(gated, first) ? second : first;
        var (a, b) = gated.A == middle ? (plain.Other(middle), gated.B) : (gated.A, plain.Other(middle));
        var named = gated.Gate.Kind != GateKind.Open || gated.Area <= plain.Area ? gated : plain;
        return new Edge
        {
            Kind = gated.Kind,
            A = a,
            B = b,
            Area = Series(first.Area, second.Area),
            Gate = gated.Gate,
            Element = named.Element,
            Part = named.Part,
            Revision = named.Revision,
            Detail = named.Detail,
            Place = named.Place,

            // In and out of one opening it is still that opening; different ones in a row have no shape of their own.
            Shape = ReferenceEquals(first.Shape, second.Shape) ? first.Shape : null,
        };
    }

    private static double Series(double a, double b)
    {
        if (double.IsInfinity(a)) return b;
        if (double.IsInfinity(b)) return a;
        return 1 / Math.Sqrt((1 / (a * a)) + (1 / (b * b)));
    }
}
