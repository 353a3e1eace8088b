namespace Circuits.Networks;

/// <summary>A piece that ways are made of.</summary>
/// <param name="Number">What the caller knows it by.</param>
/// <param name="From">The node that it leaves.</param>
/// <param name="To">The node that it enters.</param>
/// <param name="Width">Its width, above zero; may be infinite.</param>
internal readonly record struct Piece(int Number, int From, int To, double Width);

/// <summary>
/// The widest way from a node to every node that has one: the one whose narrowest piece is widest. Holds work arrays; what
/// it says is overwritten by the next search.
/// </summary>
internal sealed class WidestWays
{
    // A search of its own: asked for twice in each gear of each assembly, it must not build a graph of objects first.
    private readonly PriorityQueue<int, double> open = new();
    private Piece[] pieces = [];
    private int[] first = [];
    private int[] next = [];
    private int[] into = [];
    private double[] widest = [];
    private int start;

    /// <summary>Searches.</summary>
    /// <param name="nodes">How many nodes there are; they are numbered from 0.</param>
    /// <param name="from">Where every way begins.</param>
    /// <param name="of">What ways are made of.</param>
    public void Search(int nodes, int from, ReadOnlySpan<Piece> of)
    {
        start = from;
        of.CopyTo(WorkArray.Of(ref pieces, of.Length));
        var first = WorkArray.Filled(ref this.first, nodes, -1);
        var next = WorkArray.Of(ref this.next, of.Length);
        for (var piece = of.Length - 1; piece >= 0; piece--)
        {
            next[piece] = first[of[piece].From];
            first[of[piece].From] = piece;
        }

        var into = WorkArray.Filled(ref this.into, nodes, -1);
        var widest = WorkArray.Filled(ref this.widest, nodes, 0);
        widest[from] = double.PositiveInfinity;
        open.Enqueue(from, -widest[from]);
        while (open.TryDequeue(out var at, out var negative))
        {
            if (-negative < widest[at]) continue;
            for (var piece = first[at]; piece >= 0; piece = next[piece])
            {
                var to = of[piece].To;
                var through = Math.Min(widest[at], of[piece].Width);
                if (through <= widest[to]) continue;
                widest[to] = through;
                into[to] = piece;
                open.Enqueue(to, -through);
            }
        }
    }

    /// <summary>Whether a way leads to a node; the start has one of no pieces.</summary>
    public bool Reaches(int node) => node == start || (node >= 0 && into[node] >= 0);

    /// <summary>The last piece of the way to a node; there is none at the start.</summary>
    public Piece? Into(int node) => into[node] < 0 ? null : pieces[into[node]];
}
