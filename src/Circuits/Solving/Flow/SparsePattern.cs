namespace Circuits.Solving.Flow;

/// <summary>
/// Where a sparse system and its factors hold numbers, and the order of elimination: found once a network, and shared by every
/// system made of it. Never changes.
/// </summary>
internal sealed class SparsePattern
{
    private readonly Dictionary<(int, int), int> places = [];

    /// <summary>Finds order and places.</summary>
    /// <param name="count">How many unknowns.</param>
    /// <param name="pairs">Rows and columns that may hold something; the mirrored place always may, and so may the diagonal.</param>
    public SparsePattern(int count, IEnumerable<(int Row, int Column)> pairs)
    {
        Count = count;
        (Order, var later) = SparseOrder.Of(count, pairs);
        Starts = new int[count + 1];
        for (var k = 0; k < count; k++) Starts[k + 1] = Starts[k] + later[Order[k]].Length;
        Others = new int[Starts[count]];
        for (var i = 0; i < count; i++) places[(i, i)] = i;
        for (var k = 0; k < count; k++)
        {
            var pivot = Order[k];
            for (var j = 0; j < later[pivot].Length; j++)
            {
                var at = Starts[k] + j;
                Others[at] = later[pivot][j];
                places[(pivot, Others[at])] = Upper(at);
                places[(Others[at], pivot)] = Lower(at);
            }
        }

        Fills = FillsOf(later);
    }

    /// <summary>How many unknowns there are.</summary>
    public int Count { get; }

    /// <summary>How many numbers the factors hold.</summary>
    public int Filled => Count + (2 * Others.Length);

    /// <summary>The unknowns in the order of elimination.</summary>
    public int[] Order { get; }

    /// <summary>For each turn, where those that its unknown touches begin in <see cref="Others"/>; one more for the end.</summary>
    public int[] Starts { get; }

    /// <summary>The unknowns that come later and are touched, turn by turn, in the order of elimination.</summary>
    public int[] Others { get; }

    /// <summary>Turn by turn, the places that elimination changes beyond its own row and column: every pair of those touched.</summary>
    public int[] Fills { get; }

    /// <summary>The place of an entry, to set it by.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="column">Its column.</param>
    /// <exception cref="KeyNotFoundException">The system was not prepared for that entry.</exception>
    public int PlaceOf(int row, int column) => places[(row, column)];

    /// <summary>The place of an entry right of the diagonal, by its number in <see cref="Others"/>.</summary>
    public int Upper(int at) => Count + (2 * at);

    /// <summary>The place of the entry that mirrors it.</summary>
    public int Lower(int at) => Count + (2 * at) + 1;

    private int[] FillsOf(int[][] later)
    {
        var targets = new List<int>();
        foreach (var pivot in Order)
        {
            foreach (var i in later[pivot])
            {
                foreach (var j in later[pivot]) targets.Add(places[(i, j)]);
            }
        }

        return [.. targets];
    }
}
