using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>The static orifice law: flow goes with the root of the difference, and its slope is its derivative.</summary>
public class StaticOrificeTests
{
    [Fact]
    public void Far_from_zero_flow_is_the_root_of_the_difference()
    {
        // The law of the sharp orifice (Rabie, "Fluid Power Engineering", McGraw-Hill 2009, eq 2.36), constants left out.
        Assert.Equal(Math.Sqrt(400), OrificeLaw.At(400, 1e-6).Flow, 1e-9);
        Assert.Equal(-Math.Sqrt(2.5), OrificeLaw.At(-2.5, 1e-6).Flow, 1e-9);
        Assert.Equal(0, OrificeLaw.At(0, 1).Flow);
    }

    [Theory]
    [InlineData(300, 1000)]
    [InlineData(-20, 10)]
    [InlineData(5, 1e-3)]
    [InlineData(0, 1)]
    public void The_slope_is_the_derivative(double difference, double softness)
    {
        const double step = 1e-4;
        var derivative = (OrificeLaw.At(difference + step, softness).Flow - OrificeLaw.At(difference - step, softness).Flow) / (2 * step);
        Assert.Equal(derivative, OrificeLaw.At(difference, softness).Slope, 1e-6 * Math.Max(1, derivative));
    }

    [Fact]
    public void Many_at_a_time_are_the_very_same_numbers()
    {
        var random = new Random(5);
        for (var count = 0; count < 40; count++)
        {
            double[] differences = [.. Enumerable.Range(0, count).Select(_ => 1000 * (random.NextDouble() - 0.5))];
            foreach (var softness in new[] { 1000.0, 1, 1e-6 })
            {
                var (flows, slopes) = ((double[])differences.Clone(), new double[count]);
                OrificeLaw.At(flows, softness, flows, slopes);
                Assert.Equal(differences.Select(difference => OrificeLaw.At(difference, softness)), flows.Zip(slopes));
            }
        }
    }
}
