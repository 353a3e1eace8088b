namespace Circuits.Solving.Flow;

/// <summary>
/// A sparse system of linear equations, solved again and again with other numbers in the same places; setting, factoring and
/// solving allocate nothing. For one thread.
/// </summary>
/// <remarks>
/// Gaussian elimination without exchange of rows: flow networks have their largest entries on the diagonal. An unknown whose pivot
/// vanishes (oil that nothing joins to a fixed pressure) is left as it is, and the rest is solved around it.
/// </remarks>
/// <param name="pattern">Where it may hold numbers.</param>
internal sealed class SparseSystem(SparsePattern pattern)
{
    /// <summary>A pivot smaller than this fraction of its row's entry before elimination has vanished.</summary>
    private const double Vanished = 1e-13;

    private readonly double[] values = new double[pattern.Filled];
    private readonly double[] work = new double[pattern.Count];
    private readonly double[] diagonals = new double[pattern.Count];

    /// <summary>Where it may hold numbers.</summary>
    public SparsePattern Pattern => pattern;

    /// <summary>The numbers, by place.</summary>
    public double[] Values => values;

    /// <summary>Sets every entry to zero.</summary>
    public void Clear() => Array.Clear(values);

    /// <summary>Factors the entries as they stand; they are overwritten.</summary>
    public void Factor()
    {
        var (count, order, starts, fills) = (pattern.Count, pattern.Order, pattern.Starts, pattern.Fills);
        Array.Copy(values, diagonals, count);
        var fill = 0;
        for (var k = 0; k < order.Length; k++)
        {
            var pivot = order[k];
            var inverse = Math.Abs(values[pivot]) <= Vanished * Math.Abs(diagonals[pivot]) ? 0 : 1 / values[pivot];
            values[pivot] = inverse;

            // Upper and lower entries of a turn lie side by side from here on: upper, lower, upper, lower.
            var row = values.AsSpan(count + (2 * starts[k]), 2 * (starts[k + 1] - starts[k]));
            for (var i = 1; i < row.Length; i += 2)
            {
                var share = row[i] * inverse;
                row[i] = share;
                for (var j = 0; j < row.Length; j += 2) values[fills[fill++]] -= share * row[j];
            }
        }
    }

    /// <summary>Solves for a right side with the factors as they stand.</summary>
    /// <param name="side">The right side in, the solution out.</param>
    public void Solve(double[] side)
    {
        var (count, order, starts, others) = (pattern.Count, pattern.Order, pattern.Starts, pattern.Others);
        for (var k = 0; k < order.Length; k++)
        {
            var value = side[order[k]];
            work[k] = value;
            if (value == 0) continue;
            for (var at = starts[k]; at < starts[k + 1]; at++) side[others[at]] -= values[count + (2 * at) + 1] * value;
        }

        for (var k = order.Length - 1; k >= 0; k--)
        {
            var value = work[k];
            for (var at = starts[k]; at < starts[k + 1]; at++) value -= values[count + (2 * at)] * side[others[at]];
            side[order[k]] = value * values[order[k]];
        }
    }
}
