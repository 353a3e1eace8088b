namespace Circuits.Driveline;

/// <summary>
/// The speeds that one-way clutches allow while the input turns at 1, and the extremes of one speed among them: a
/// linear program in exact fractions, as a tableau whose nonbasic variables are slip speeds of one-way clutches.
/// </summary>
/// <remarks>
/// An extreme comes with its proof: the speed equals the extreme plus a combination, all of one sign, of slips that
/// cannot be negative. By virtual work the factors of that combination are the torques of the one-way clutches.
/// Least-index choices keep it from cycling (R. G. Bland, "New finite pivoting rules for the simplex method", 1977).
/// </remarks>
internal sealed class SpeedRange
{
    // No slip: a speed that may take either sign.
    private const int Unbound = -1;

    // Row r: value = row[0] + sum of row[j] * variable of column j. The slips come first, then the watched speeds.
    private readonly Fraction[][] rows;

    // Which slip each column, and each of the slip rows, stands for.
    private readonly int[] columns;
    private readonly int[] basic;

    private SpeedRange(Fraction[][] rows, int[] columns, int[] basic)
    {
        this.rows = rows;
        this.columns = columns;
        this.basic = basic;
    }

    /// <summary>Sets the input to 1.</summary>
    /// <param name="input">The input speed as a combination of the free speeds; not all zero.</param>
    /// <param name="slips">Each one-way clutch's slip, which cannot be negative, as such a combination.</param>
    /// <param name="speeds">The speeds to watch, as such combinations.</param>
    /// <returns>The range, or null when no motion with the input at 1 is allowed.</returns>
    public static SpeedRange? TryCreate(Fraction[] input, Fraction[][] slips, Fraction[][] speeds)
    {
        var pivot = Array.FindIndex(input, value => !value.IsZero);
        var scale = Fraction.One / input[pivot];
        Fraction[] Substitute(Fraction[] row)
        {
            var result = new Fraction[row.Length];
            result[0] = row[pivot] * scale;
            for (int from = 0, to = 1; from < row.Length; from++)
            {
                if (from == pivot) continue;
                result[to++] = input[from].IsZero ? row[from] : row[from] - result[0] * input[from];
            }

            return result;
        }

        var columns = new int[input.Length];
        Array.Fill(columns, Unbound);
        var range = new SpeedRange(
            [.. slips.Select(Substitute), .. speeds.Select(Substitute)], columns, [.. Enumerable.Range(0, slips.Length)]);
        range.ExpressFreeSpeedsBySlips();
        return range.MakeFeasible() ? range : null;
    }

    /// <summary>Goes to an extreme of a watched speed.</summary>
    /// <param name="speed">Which one.</param>
    /// <param name="direction">1 for the least, -1 for the greatest.</param>
    /// <returns>The extreme, or null when there is no bound.</returns>
    public Fraction? Extreme(int speed, int direction)
    {
        var goal = rows[basic.Length + speed];
        while (true)
        {
            var entering = 0;
            for (var j = 1; j < columns.Length; j++)
            {
                var sign = goal[j].Sign * direction;
                if (columns[j] == Unbound && sign != 0) return null;
                if (columns[j] == Unbound || sign >= 0) continue;
                if (entering == 0 || columns[j] < columns[entering]) entering = j;
            }

            if (entering == 0) return goal[0];
            var leaving = -1;
            var least = Fraction.Zero;
            for (var r = 0; r < basic.Length; r++)
            {
                if (basic[r] == Unbound || rows[r][entering].Sign >= 0) continue;
                var step = rows[r][0] / -rows[r][entering];
                var order = leaving < 0 ? -1 : step.CompareTo(least);
                if (order > 0 || (order == 0 && basic[r] > basic[leaving])) continue;
                leaving = r;
                least = step;
            }

            if (leaving < 0) return null;
            Pivot(leaving, entering);
            goal = rows[basic.Length + speed];
        }
    }

    /// <summary>At the extreme of a watched speed, the factor of each slip in it; zero for those that do not matter.</summary>
    public Fraction[] Factors(int speed)
    {
        var factors = new Fraction[basic.Length];
        for (var j = 1; j < columns.Length; j++)
        {
            if (columns[j] != Unbound) factors[columns[j]] = rows[basic.Length + speed][j];
        }

        return factors;
    }

    /// <summary>The value of a watched speed when the slips that matter to another are zero; null when that leaves it open.</summary>
    public Fraction? Settled(int speed, int extreme)
    {
        var row = rows[basic.Length + speed];
        var held = rows[basic.Length + extreme];
        for (var j = 1; j < columns.Length; j++)
        {
            if (!row[j].IsZero && held[j].IsZero) return null;
        }

        return row[0];
    }

    private void ExpressFreeSpeedsBySlips()
    {
        for (var j = 1; j < columns.Length; j++)
        {
            for (var r = 0; r < basic.Length; r++)
            {
                if (basic[r] == Unbound || rows[r][j].IsZero) continue;
                Pivot(r, j);
                break;
            }
        }
    }

    private bool MakeFeasible()
    {
        while (true)
        {
            var leaving = -1;
            for (var r = 0; r < basic.Length; r++)
            {
                if (basic[r] == Unbound || rows[r][0].Sign >= 0) continue;
                if (leaving < 0 || basic[r] < basic[leaving]) leaving = r;
            }

            if (leaving < 0) return true;
            var entering = 0;
            for (var j = 1; j < columns.Length; j++)
            {
                if (columns[j] == Unbound || rows[leaving][j].Sign <= 0) continue;
                if (entering == 0 || columns[j] < columns[entering]) entering = j;
            }

            if (entering == 0) return false;
            Pivot(leaving, entering);
        }
    }

    private void Pivot(int leaving, int entering)
    {
        var pivotRow = rows[leaving];
        var scale = Fraction.One / pivotRow[entering];
        for (var j = 0; j < pivotRow.Length; j++)
        {
            if (j != entering && !pivotRow[j].IsZero) pivotRow[j] *= -scale;
        }

        pivotRow[entering] = scale;
        for (var r = 0; r < rows.Length; r++)
        {
            var factor = rows[r][entering];
            if (r == leaving || factor.IsZero) continue;
            rows[r][entering] = Fraction.Zero;
            Elimination.AddTo(rows[r], pivotRow, factor);
        }

        (columns[entering], basic[leaving]) = (basic[leaving], columns[entering]);
    }
}
