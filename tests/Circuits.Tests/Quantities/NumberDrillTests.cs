using Circuits.Quantities;
using Xunit;

namespace Circuits.Tests.Quantities;

public sealed class NumberDrillTests
{
    // Inches, as shop charts of number drills give them (ASME B94.11M).
    [Theory]
    [InlineData(80, 0.0135)]
    [InlineData(75, 0.0210)]
    [InlineData(70, 0.0280)]
    [InlineData(68, 0.0310)]
    [InlineData(65, 0.0350)]
    [InlineData(62, 0.0380)]
    [InlineData(61, 0.0390)]
    [InlineData(60, 0.0400)]
    [InlineData(59, 0.0410)]
    [InlineData(58, 0.0420)]
    [InlineData(57, 0.0430)]
    [InlineData(56, 0.0465)]
    [InlineData(55, 0.0520)]
    [InlineData(54, 0.0550)]
    [InlineData(53, 0.0595)]
    [InlineData(52, 0.0635)]
    [InlineData(51, 0.0670)]
    [InlineData(50, 0.0700)]
    [InlineData(48, 0.0760)]
    [InlineData(45, 0.0820)]
    [InlineData(42, 0.0935)]
    [InlineData(40, 0.0980)]
    [InlineData(35, 0.1100)]
    public void A_drill_has_the_diameter_of_the_standard(int number, double inches) =>
        Assert.Equal(inches * 25.4, NumberDrill.Diameter(number)!.Value.Millimetres, 9);

    // From memory, not read in the standard.
    [Theory]
    [InlineData(1, 0.2280)]
    [InlineData(2, 0.2210)]
    [InlineData(7, 0.2010)]
    [InlineData(10, 0.1935)]
    [InlineData(16, 0.1770)]
    [InlineData(20, 0.1610)]
    [InlineData(21, 0.1590)]
    [InlineData(25, 0.1495)]
    [InlineData(29, 0.1360)]
    [InlineData(30, 0.1285)]
    [InlineData(33, 0.1130)]
    [InlineData(36, 0.1065)]
    [InlineData(43, 0.0890)]
    [InlineData(47, 0.0785)]
    [InlineData(69, 0.0292)]
    [InlineData(74, 0.0225)]
    [InlineData(77, 0.0180)]
    [InlineData(79, 0.0145)]
    public void A_drill_has_the_diameter_remembered(int number, double inches) =>
        Assert.Equal(inches * 25.4, NumberDrill.Diameter(number)!.Value.Millimetres, 9);

    [Fact]
    public void Drills_grow_smaller_with_their_number()
    {
        for (var number = NumberDrill.First; number < NumberDrill.Last; number++)
            Assert.True(NumberDrill.Diameter(number)!.Value.Millimetres > NumberDrill.Diameter(number + 1)!.Value.Millimetres, $"#{number}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(81)]
    [InlineData(-1)]
    public void There_is_no_other_drill(int number) => Assert.Null(NumberDrill.Diameter(number));

    [Theory]
    [InlineData(2.08, 45)]
    [InlineData(100, 1)]
    [InlineData(0.01, 80)]
    [InlineData(1.0160, 60)]
    public void The_nearest_drill_is_found(double millimetres, int number) => Assert.Equal(number, NumberDrill.Nearest(new Length(millimetres)));

    [Fact]
    public void Every_drill_is_nearest_to_itself() =>
        Assert.All(Enumerable.Range(NumberDrill.First, NumberDrill.Last), number => Assert.Equal(number, NumberDrill.Nearest(NumberDrill.Diameter(number)!.Value)));

    /// <summary>ASME B94.11M: #47 0.0785 in, #46 0.0810 in; #1 0.2280 in; #80 0.0135 in.</summary>
    [Theory]
    [InlineData(2.0, 47, 46)]
    [InlineData(0.0785 * 25.4, 47, 47)]
    [InlineData(0.2280 * 25.4, 1, 1)]
    [InlineData(6.0, 1, null)]
    [InlineData(0.3, null, 80)]
    public void The_drills_below_and_above_are_found(double millimetres, int? below, int? above) =>
        Assert.Equal((below, above), (NumberDrill.Below(new Length(millimetres)), NumberDrill.Above(new Length(millimetres))));
}
