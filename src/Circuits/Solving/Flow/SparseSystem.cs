namespace Circuits.Solving.Flow;

/// <summary>
/// A sparse system of linear equations, solved again and again with other numbers in the same places. The order of
/// elimination and the places of fill-in are found once; setting, factoring and solving then allocate nothing.
/// </summary>
/// <remarks>
/// Gaussian elimination without exchange of rows: flow networks have their largest entries on the diagonal. An unknown whose pivot
/// vanishes (oil that nothing joins to a fixed pressure) is left as it is, and the rest is solved around it.
/// </remarks>
internal sealed class SparseSystem
{
    /// <summary>A pivot smaller than this fraction of its row's entry before elimination has vanished.</summary>
    private const double Vanished = 1e-13;

    private readonly int[] order;
    private readonly int[][] later;
    private readonly Dictionary<(int, int), int> places = [];
    private readonly int[] starts;
    private readonly int[] lower;
    private readonly int[] upper;
    private readonly int[] fillStarts;
    private readonly int[] fills;
    private readonly double[] values;
    private readonly double[] work;
    private readonly double[] diagonals;

    /// <summary>Prepares a system.</summary>
    /// <param name="count">How many unknowns.</param>
    /// <param name="pairs">Rows and columns that may hold something; the mirrored place always may, and so may the diagonal.</param>
    public SparseSystem(int count, IEnumerable<(int Row, int Column)> pairs)
    {
        Count = count;
        (order, later) = SparseOrder.Of(count, pairs);
        starts = new int[count + 1];
        for (var k = 0; k < count; k++) starts[k + 1] = starts[k] + later[order[k]].Length;
        var off = starts[count];
        lower = new int[off];
        upper = new int[off];
        for (var i = 0; i < count; i++) places[(i, i)] = i;
        for (var k = 0; k < count; k++)
        {
            var pivot = order[k];
            for (var j = 0; j < later[pivot].Length; j++)
            {
                var at = starts[k] + j;
                upper[at] = count + (2 * at);
                lower[at] = upper[at] + 1;
                places[(pivot, later[pivot][j])] = upper[at];
                places[(later[pivot][j], pivot)] = lower[at];
            }
        }

        (fillStarts, fills) = Fills();
        values = new double[count + (2 * off)];
        work = new double[count];
        diagonals = new double[count];
    }

    /// <summary>How many unknowns there are.</summary>
    public int Count { get; }

    /// <summary>How many numbers the factors hold.</summary>
    public int Filled => values.Length;

    /// <summary>The place of an entry, to set it by.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="column">Its column.</param>
    /// <exception cref="KeyNotFoundException">The system was not prepared for that entry.</exception>
    public int PlaceOf(int row, int column) => places[(row, column)];

    /// <summary>The numbers, by place.</summary>
    public double[] Values => values;

    /// <summary>Sets every entry to zero.</summary>
    public void Clear() => Array.Clear(values);

    /// <summary>Factors the entries as they stand; they are overwritten.</summary>
    public void Factor()
    {
        Array.Copy(values, diagonals, Count);
        for (var k = 0; k < Count; k++)
        {
            var pivot = order[k];
            var inverse = Math.Abs(values[pivot]) <= Vanished * Math.Abs(diagonals[pivot]) ? 0 : 1 / values[pivot];
            values[pivot] = inverse;
            var fill = fillStarts[k];
            for (var i = starts[k]; i < starts[k + 1]; i++)
            {
                var share = values[lower[i]] * inverse;
                values[lower[i]] = share;
                var width = starts[k + 1] - starts[k];
                if (share == 0)
                {
                    fill += width;
                    continue;
                }

                for (var j = starts[k]; j < starts[k + 1]; j++) values[fills[fill++]] -= share * values[upper[j]];
            }
        }
    }

    /// <summary>Solves for a right side with the factors as they stand.</summary>
    /// <param name="side">The right side in, the solution out.</param>
    public void Solve(double[] side)
    {
        for (var k = 0; k < Count; k++)
        {
            var row = later[order[k]];
            var value = side[order[k]];
            work[k] = value;
            if (value == 0) continue;
            for (var j = 0; j < row.Length; j++) side[row[j]] -= values[lower[starts[k] + j]] * value;
        }

        for (var k = Count - 1; k >= 0; k--)
        {
            var pivot = order[k];
            var row = later[pivot];
            var value = work[k];
            for (var j = 0; j < row.Length; j++) value -= values[upper[starts[k] + j]] * side[row[j]];
            side[pivot] = value * values[pivot];
        }
    }

    private (int[] Starts, int[] Fills) Fills()
    {
        var first = new int[Count + 1];
        var targets = new List<int>();
        for (var k = 0; k < Count; k++)
        {
            first[k] = targets.Count;
            var row = later[order[k]];
            foreach (var i in row)
            {
                foreach (var j in row) targets.Add(places[(i, j)]);
            }
        }

        first[Count] = targets.Count;
        return (first, [.. targets]);
    }
}
