using Circuits.Judging.Changes;
using Xunit;

namespace Circuits.Tests.Studies.Shifts;

/// <summary>Crossings of a sampled quantity, straight between samples.</summary>
public sealed class CurveTests
{
    // 0, 1, 2, 1, 3 at 0, 0.1, 0.2, 0.3, 0.5 s.
    private static readonly double[] Values = [0, 1, 2, 1, 3];
    private static readonly Curve Rising = new([0, 0.1, 0.2, 0.3, 0.5]);

    [Fact]
    public void When_it_passes_a_level()
    {
        Assert.Equal(150, Rising.Reaches(Of, 1.5)!.Value, 9);
        Assert.Equal(0, Rising.Reaches(Of, 0));
        Assert.Null(Rising.Reaches(Of, 3.1));
        Assert.Equal(350, Rising.StaysAtOrAbove(Of, 1.5)!.Value, 9);
        Assert.Equal(50, Rising.StaysAtOrAbove(Of, 0.5)!.Value, 9);
        Assert.Null(Rising.StaysAtOrAbove(Of, 3.1));
        Assert.Equal(350, Rising.StaysAtOrBelow(i => -Of(i), -1.5)!.Value, 9);
        Assert.Null(Rising.StaysAtOrBelow(Of, 2.9));
    }

    // Above 0.5 from 50 ms to the end; above 1.5 from 150 to 250 and from 350 to 500 ms; above 2.5 from 450 ms.
    [Theory]
    [InlineData(0.5, 450)]
    [InlineData(1.5, 150)]
    [InlineData(2.5, 50)]
    [InlineData(3, 0)]
    [InlineData(-1, 500)]
    public void How_long_it_is_above_a_level_without_a_break(double level, double milliseconds) =>
        Assert.Equal(milliseconds, Rising.LongestAbove(Of, level), 9);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.05, 0.5)]
    [InlineData(0.25, 1.5)]
    [InlineData(0.4, 2)]
    [InlineData(0.9, 3)]
    public void What_it_is_between_samples(double seconds, double value) => Assert.Equal(value, Rising.At(Of, seconds), 9);

    private static double Of(int sample) => Values[sample];
}
