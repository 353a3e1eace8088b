using Circuits.Quantities;
using Xunit;

namespace Circuits.Tests.Quantities;

public sealed class ToleranceTextTests
{
    [Theory]
    [InlineData("2.1 mm", 2.1, 0)]
    [InlineData("2.10 +- 0.05 mm", 2.1, 0.05)]
    [InlineData("2.10±0.05 mm", 2.1, 0.05)]
    [InlineData("2.1 mm +- 0.05", 2.1, 0.05)]
    [InlineData("0.1 in +- 0.002 in", 2.54, 0.0508)]
    [InlineData("2.1 mm +- 50 um", 2.1, 0.05)]
    [InlineData("#45 +- 0.02 mm", 0.082 * 25.4, 0.02)]
    [InlineData("40 N +- 10 %", 40, 4)]
    [InlineData("0.12 +- 0.01", 0.12, 0.01)]
    [InlineData("0.12 +- 10 %", 0.12, 0.012)]
    [InlineData("85 % +- 2 %", 0.85, 0.02)]
    [InlineData("194 degF +- 9 degF", 90, 5)]
    public void A_size_and_its_tolerance_are_read(string text, double value, double plus)
    {
        var read = ToleranceText.Parse(text);
        Assert.Equal(value, read.Size.Value, 1e-12 * Math.Max(1, value));
        Assert.Equal(plus, read.Plus, 1e-12);
    }

    [Theory]
    [InlineData("2.1 mm +- 5 kPa")]
    [InlineData("2.1 mm +- much")]
    [InlineData("90 degC +- 3 %")]
    [InlineData("2.1 mm +-")]
    public void What_is_no_tolerance_of_the_size_has_none(string text) => Assert.True(double.IsNaN(ToleranceText.Parse(text).Plus));
}
