using System.Globalization;
using Circuits.Quantities;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Quantities;

public sealed class QuantityTextTests
{
    // Exact by definition (international inch; pound-force from the international pound and standard gravity), as NIST
    // SP 811 lists them; figures from memory.
    [Theory]
    [InlineData("2.1 mm", Dimension.Length, 2.1)]
    [InlineData("2.1mm", Dimension.Length, 2.1)]
    [InlineData("  2.1   mm ", Dimension.Length, 2.1)]
    [InlineData("3 cm", Dimension.Length, 30)]
    [InlineData("0.5 m", Dimension.Length, 500)]
    [InlineData("25 um", Dimension.Length, 0.025)]
    [InlineData("0.083 in", Dimension.Length, 2.1082)]
    [InlineData("#45", Dimension.Length, 2.0828)]
    [InlineData("40 mm2", Dimension.Area, 40)]
    [InlineData("98 cm2", Dimension.Area, 9800)]
    [InlineData("1 in2", Dimension.Area, 645.16)]
    [InlineData("620 kPa", Dimension.Pressure, 620)]
    [InlineData("0.62 MPa", Dimension.Pressure, 620)]
    [InlineData("6.2 bar", Dimension.Pressure, 620)]
    [InlineData("500 Pa", Dimension.Pressure, 0.5)]
    [InlineData("1 psi", Dimension.Pressure, 6.894757293168)]
    [InlineData("40 N", Dimension.Force, 40)]
    [InlineData("1.5 kN", Dimension.Force, 1500)]
    [InlineData("1 lbf", Dimension.Force, 4.4482216152605)]
    [InlineData("2 N/mm", Dimension.SpringRate, 2)]
    [InlineData("2000 N/m", Dimension.SpringRate, 2)]
    [InlineData("1 lbf/in", Dimension.SpringRate, 0.17512683524)]
    [InlineData("38 mL", Dimension.Volume, 38)]
    [InlineData("38 cm3", Dimension.Volume, 38)]
    [InlineData("38 cc", Dimension.Volume, 38)]
    [InlineData("0.038 L", Dimension.Volume, 38)]
    [InlineData("1 in3", Dimension.Volume, 16.387064)]
    [InlineData("16 mL/rev", Dimension.Displacement, 16)]
    [InlineData("16 cm3/rev", Dimension.Displacement, 16)]
    [InlineData("700 rpm", Dimension.Speed, 700)]
    [InlineData("90 degC", Dimension.Temperature, 90)]
    [InlineData("195 degF", Dimension.Temperature, 90.5555555556)]
    [InlineData("-40 degF", Dimension.Temperature, -40)]
    [InlineData("363.15 K", Dimension.Temperature, 90)]
    [InlineData("180 Nm", Dimension.Torque, 180)]
    [InlineData("1 lbf.ft", Dimension.Torque, 1.3558179483314)]
    [InlineData("300 ms", Dimension.Duration, 300)]
    [InlineData("0.3 s", Dimension.Duration, 300)]
    [InlineData("0.4 A", Dimension.Current, 0.4)]
    [InlineData("400 mA", Dimension.Current, 0.4)]
    [InlineData("32 mm2/s", Dimension.Viscosity, 32)]
    [InlineData("32 cSt", Dimension.Viscosity, 32)]
    [InlineData("860 kg/m3", Dimension.Density, 860)]
    [InlineData("85 %", Dimension.Fraction, 0.85)]
    [InlineData("85%", Dimension.Fraction, 0.85)]
    [InlineData("+.5e1 mm", Dimension.Length, 5)]
    [InlineData("5. mm", Dimension.Length, 5)]
    public void A_size_is_read_in_base_units(string text, Dimension dimension, double value)
    {
        var size = QuantityText.Parse(text);
        Assert.Equal(QuantityProblem.None, size.Problem);
        Assert.Equal(dimension, size.Unit!.Dimension);
        Assert.Equal(value, size.Value, 10);
    }

    [Theory]
    [InlineData("", QuantityProblem.NotANumber)]
    [InlineData("mm", QuantityProblem.NotANumber)]
    [InlineData(".", QuantityProblem.NotANumber)]
    [InlineData("- 2 mm", QuantityProblem.NotANumber)]
    [InlineData("two mm", QuantityProblem.NotANumber)]
    [InlineData("2.1", QuantityProblem.NoUnit)]
    [InlineData("2e3", QuantityProblem.NoUnit)]
    [InlineData("2,1 mm", QuantityProblem.DecimalComma)]
    [InlineData("2 mm 3", QuantityProblem.UnknownUnit)]
    [InlineData("2 MM", QuantityProblem.UnknownUnit)]
    [InlineData("2 e3", QuantityProblem.UnknownUnit)]
    [InlineData("1 000 mm", QuantityProblem.UnknownUnit)]
    [InlineData("#0", QuantityProblem.UnknownDrill)]
    [InlineData("#81", QuantityProblem.UnknownDrill)]
    [InlineData("#4.5", QuantityProblem.UnknownDrill)]
    [InlineData("#", QuantityProblem.UnknownDrill)]
    [InlineData("#99999999999", QuantityProblem.UnknownDrill)]
    [InlineData("1e999 mm", QuantityProblem.NotFinite)]
    [InlineData("inf mm", QuantityProblem.NotFinite)]
    [InlineData("-.inf", QuantityProblem.NotFinite)]
    [InlineData("NaN mm", QuantityProblem.NotFinite)]
    public void What_is_no_size_is_named(string text, QuantityProblem problem) => Assert.Equal(problem, QuantityText.Parse(text).Problem);

    [Fact]
    public void Every_unit_of_the_language_is_known_once()
    {
        // The list of units in the language's description.
        const string Units = "mm cm m um in mm2 cm2 in2 kPa MPa bar psi Pa N kN lbf N/mm N/m lbf/in mL cm3 L cc in3 mL/rev cm3/rev rpm degC degF K Nm lbf.ft ms s A mA mm2/s cSt kg/m3 % L/min cm3/s gpm";
        Assert.Equal(Units.Split(' ').Order(StringComparer.Ordinal), MeasureUnit.All.Select(unit => unit.Symbol).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_dimension_has_words_and_an_example_that_can_be_read()
    {
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            Assert.Matches("^an? ", dimension.Name());
            foreach (var example in dimension.Example().Replace("\"", "", StringComparison.Ordinal).Split(", ").SelectMany(part => part.Split(" or ")))
            {
                var size = QuantityText.Parse(example);
                Assert.True(size.Unit?.Dimension == dimension || (dimension is Dimension.Fraction or Dimension.Ratio && size.Problem == QuantityProblem.NoUnit), example);
            }
        }
    }

    [Fact]
    public void Any_number_in_any_unit_comes_back()
    {
        Gen.Select(Gen.Int[0, MeasureUnit.All.Length - 1], Gen.Double[-1e6, 1e6]).Sample((index, number) =>
        {
            var unit = MeasureUnit.All[index];
            var text = string.Create(CultureInfo.InvariantCulture, $"{number:R} {unit.Symbol}");
            var size = QuantityText.Parse(text);
            Assert.Equal((QuantityProblem.None, number), (size.Problem, size.Number));
            Assert.Equal(unit, size.Unit);
            Assert.Equal(number, unit.FromBase(size.Value), 1e-9 * Math.Max(1, Math.Abs(number)) + 1e-9 * Math.Abs(unit.Offset / unit.Factor));
        }, iter: 2000);
    }

    [Fact]
    public void No_text_makes_it_throw() => Gen.String.Sample(text => { QuantityText.Parse(text); }, iter: 2000);

    [Fact]
    public void The_point_is_a_point_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            comma.NumberFormat.NumberGroupSeparator = ".";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(2.1, QuantityText.Parse("2.1 mm").Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
