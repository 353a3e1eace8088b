using Circuits.Solving.Flow;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>The sparse system against a general dense one (MathNet.Numerics).</summary>
public sealed class SparseSystemTests
{
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(12, 10)]
    [InlineData(60, 40)]
    [InlineData(120, 400)]
    public void It_solves_what_a_dense_solver_solves(int count, int extra)
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var dice = new Random(seed);
            var pairs = Pairs(dice, count, extra);
            var system = new SparseSystem(new SparsePattern(count, pairs));
            var dense = Matrix<double>.Build.Dense(count, count);
            foreach (var (row, column) in pairs)
            {
                Set(row, column, dice.NextDouble() - 0.5);
                Set(column, row, dice.NextDouble() - 0.5);
            }

            for (var i = 0; i < count; i++) Set(i, i, 3 + pairs.Count(pair => pair.Item1 == i || pair.Item2 == i));
            var side = Enumerable.Range(0, count).Select(_ => dice.NextDouble()).ToArray();
            var expected = dense.Solve(Vector<double>.Build.DenseOfArray(side));
            system.Factor();
            system.Solve(side);
            for (var i = 0; i < count; i++) Assert.Equal(expected[i], side[i], 12);

            void Set(int row, int column, double value)
            {
                system.Values[system.Pattern.PlaceOf(row, column)] = value;
                dense[row, column] = value;
            }
        }
    }

    [Fact]
    public void A_tree_takes_no_fill()
    {
        var pattern = new SparsePattern(1000, Pairs(new Random(7), 1000, 0));
        Assert.Equal(1000 + (2 * 999), pattern.Filled);
    }

    [Fact]
    public void What_nothing_holds_is_left_as_it_is_and_the_rest_is_solved()
    {
        // 0 and 1 hang on one another alone; 2 stands by itself.
        var system = new SparseSystem(new SparsePattern(3, [(0, 1)]));
        foreach (var (row, column, value) in new[] { (0, 0, -2.0), (1, 1, -2.0), (0, 1, 2.0), (1, 0, 2.0), (2, 2, 4.0) })
            system.Values[system.Pattern.PlaceOf(row, column)] = value;
        double[] side = [6, -6, 8];
        system.Factor();
        system.Solve(side);
        Assert.Equal(3, side[1] - side[0], 12);
        Assert.Equal(2, side[2], 12);
    }

    /// <summary>A tree of all unknowns and some pairs more.</summary>
    private static List<(int, int)> Pairs(Random dice, int count, int extra)
    {
        var pairs = new List<(int, int)>();
        for (var i = 1; i < count; i++) pairs.Add((i, dice.Next(i)));
        for (var i = 0; i < extra; i++)
        {
            var (a, b) = (dice.Next(count), dice.Next(count));
            if (a != b) pairs.Add((a, b));
        }

        return [.. pairs.Distinct().Where(pair => !pairs.Contains((pair.Item2, pair.Item1)) || pair.Item1 < pair.Item2)];
    }
}
