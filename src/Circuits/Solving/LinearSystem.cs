namespace Circuits.Solving;

/// <summary>
/// A small dense linear system, solved in place. Own code because it runs thousands of times a second on a handful of
/// unknowns, and must not allocate.
/// </summary>
internal static class LinearSystem
{
    /// <summary>Solves A x = b by elimination with row exchange; <paramref name="b"/> becomes x, A is destroyed.</summary>
    /// <param name="a">The matrix, row by row, n x n.</param>
    /// <param name="b">The right-hand side.</param>
    /// <param name="n">The number of unknowns.</param>
    /// <returns>False when the matrix is singular.</returns>
    public static bool Solve(Span<double> a, Span<double> b, int n)
    {
        for (var column = 0; column < n; column++)
        {
            var pivot = column;
            for (var row = column + 1; row < n; row++)
            {
                if (Math.Abs(a[(row * n) + column]) > Math.Abs(a[(pivot * n) + column])) pivot = row;
            }

            if (Math.Abs(a[(pivot * n) + column]) < 1e-300) return false;
            if (pivot != column)
            {
                for (var k = column; k < n; k++)
                    (a[(pivot * n) + k], a[(column * n) + k]) = (a[(column * n) + k], a[(pivot * n) + k]);
                (b[pivot], b[column]) = (b[column], b[pivot]);
            }

            var above = a.Slice((column * n) + column, n - column);
            for (var row = column + 1; row < n; row++)
            {
                var below = a.Slice((row * n) + column, n - column);
                if (below[0] == 0) continue;
                var factor = below[0] / above[0];
                for (var k = 1; k < below.Length; k++) below[k] -= factor * above[k];
                b[row] -= factor * b[column];
            }
        }

        for (var row = n - 1; row >= 0; row--)
        {
            var sum = b[row];
            for (var k = row + 1; k < n; k++) sum -= a[(row * n) + k] * b[k];
            b[row] = sum / a[(row * n) + row];
        }

        return true;
    }
}
