namespace Circuits.Driveline;

/// <summary>Exact Gauss-Jordan elimination on dense rows.</summary>
internal static class Elimination
{
    /// <summary>
    /// Brings rows to reduced form in place, independent rows first, and returns the pivot column of each of those.
    /// </summary>
    /// <param name="rows">The rows; changed.</param>
    /// <param name="columns">How many leading columns may hold a pivot.</param>
    public static List<int> Reduce(Fraction[][] rows, int columns)
    {
        var pivots = new List<int>(Math.Min(rows.Length, columns));
        for (var column = 0; column < columns && pivots.Count < rows.Length; column++)
        {
            var rank = pivots.Count;
            var found = Array.FindIndex(rows, rank, row => !row[column].IsZero);
            if (found < 0) continue;
            (rows[rank], rows[found]) = (rows[found], rows[rank]);
            var pivotRow = rows[rank];
            var scale = Fraction.One / pivotRow[column];
            for (var i = column; i < pivotRow.Length; i++) pivotRow[i] *= scale;
            foreach (var row in rows)
            {
                if (row == pivotRow || row[column].IsZero) continue;
                var factor = -row[column];
                for (var i = column; i < row.Length; i++)
                {
                    if (!pivotRow[i].IsZero) row[i] += factor * pivotRow[i];
                }
            }

            pivots.Add(column);
        }

        return pivots;
    }

    /// <summary>
    /// Everything that satisfies <c>rows x = 0</c>: each unknown as a combination of the free unknowns, so that the
    /// row of a free unknown is a unit row.
    /// </summary>
    /// <param name="rows">The equations; changed.</param>
    /// <param name="unknowns">The number of unknowns.</param>
    public static Fraction[][] Kernel(Fraction[][] rows, int unknowns)
    {
        var pivots = Reduce(rows, unknowns);
        var free = new List<int>(unknowns - pivots.Count);
        for (var unknown = 0; unknown < unknowns; unknown++)
        {
            if (!pivots.Contains(unknown)) free.Add(unknown);
        }

        var kernel = new Fraction[unknowns][];
        for (var j = 0; j < free.Count; j++)
        {
            kernel[free[j]] = new Fraction[free.Count];
            kernel[free[j]][j] = Fraction.One;
        }

        for (var i = 0; i < pivots.Count; i++) kernel[pivots[i]] = [.. free.Select(column => -rows[i][column])];
        return kernel;
    }

    /// <summary>The combination of <paramref name="basis"/> rows that <paramref name="weights"/> gives.</summary>
    public static Fraction[] Combine(Fraction[] weights, Fraction[][] basis, int width)
    {
        var sum = new Fraction[width];
        for (var i = 0; i < weights.Length; i++)
        {
            if (!weights[i].IsZero) AddTo(sum, basis[i], weights[i]);
        }

        return sum;
    }

    /// <summary>Adds a multiple of one row to another.</summary>
    public static void AddTo(Fraction[] sum, Fraction[] row, Fraction factor)
    {
        for (var j = 0; j < sum.Length; j++)
        {
            if (!row[j].IsZero) sum[j] += factor * row[j];
        }
    }

    /// <summary>One row less another.</summary>
    public static Fraction[] Difference(Fraction[] left, Fraction[] right)
    {
        var difference = new Fraction[left.Length];
        for (var j = 0; j < difference.Length; j++) difference[j] = left[j] - right[j];
        return difference;
    }
}
