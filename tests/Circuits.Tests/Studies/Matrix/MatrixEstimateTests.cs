using Circuits.Studies.Matrix;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Matrix;

/// <summary>How long a matrix is said to take.</summary>
public class MatrixEstimateTests
{
    // The expectation in closed form: of n kinds, d draws show n (1 - (1 - 1/n)^d).
    [Theory]
    [InlineData(365, 23)]
    [InlineData(365, 400)]
    [InlineData(10_000, 4_096)]
    [InlineData(1_000, 4_096)]
    public void Kinds_are_counted_from_those_that_some_draws_show(int kinds, int draws)
    {
        var seen = kinds * (1 - Math.Pow(1 - (1.0 / kinds), draws));
        var (few, many) = (MatrixEstimate.Different(draws, (long)Math.Floor(seen), 1L << 40), MatrixEstimate.Different(draws, (long)Math.Ceiling(seen), 1L << 40));
        Assert.InRange(kinds, few * 0.99, many * 1.01);
    }

    [Fact]
    public void Where_all_were_drawn_or_none_were_alike_nothing_is_guessed()
    {
        Assert.Equal(7, MatrixEstimate.Different(100, 7, 100));
        Assert.Equal(1_000_000, MatrixEstimate.Different(100, 100, 1_000_000), 1.0);
    }

    [Fact]
    public void A_few_assemblies_need_no_estimate_and_the_full_unit_is_begun()
    {
        var rill = MatrixSpace.Of(new DemoUnit("rill/rill.yaml").Unit)!;
        Assert.Equal(TimeSpan.Zero, MatrixEstimate.Of(rill, (0, rill.Count), 2, TimeProvider.System, CancellationToken.None));
        var firth = MatrixSpace.Of(new DemoUnit("firth/firth.yaml").Unit)!;
        Assert.InRange(MatrixEstimate.Of(firth, (0, firth.Count), 2, TimeProvider.System, CancellationToken.None), TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(10));
    }
}
