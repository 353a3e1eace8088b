using Circuits.Laws;
using CsCheck;
using Xunit;
using static Circuits.Tests.Laws.FlowLaw;

namespace Circuits.Tests.Laws;

public class SharpOrificeTests
{
    private static readonly Gen<(double Dp, double Diameter, double Density, double Viscosity)> Cases =
        Gen.Select(Difference, Diameter, FlowLaw.Density, Viscosity);

    /// <summary>Q = delta^2 / 0.157^2 of a slit, linear in dp: 2 delta^2 D A dp / mu with D twice the width; a round hole of that area would pass more.</summary>
    [Fact]
    public void A_narrow_slot_is_as_slow_as_a_slit_in_cold_oil()
    {
        const double width = 0.3e-3, length = 12e-3, nu = 400e-6, dp = 100;
        var area = width * length;
        var slot = SharpOrifice.SizedSlot(area, width, length, 850, nu).Flow(dp).Flow;
        Assert.Equal(2 * 0.157 * 0.157 * 2 * width * area * dp / (850 * nu), slot, 0.05 * slot);
        Assert.True(slot < 0.2 * SharpOrifice.Sized(area, 850, nu).Flow(dp).Flow);
        Assert.Equal(SharpOrifice.Sized(area, 850, 1e-12).Flow(1e6).Flow, SharpOrifice.SizedSlot(area, width, length, 850, 1e-12).Flow(1e6).Flow, 1e-12);
    }

    [Fact]
    public void Is_odd_rising_and_smooth() =>
        ForAll(Cases, x => Fault(dp => SharpOrifice.Flow(Area(x.Diameter), dp, x.Density, x.Viscosity), x.Dp));

    [Fact]
    public void Lies_below_both_its_ends()
    {
        ForAll(Cases, x =>
        {
            var area = Area(x.Diameter);
            var flow = SharpOrifice.Flow(area, x.Dp, x.Density, x.Viscosity).Flow;
            var turbulent = 0.611 * area * Math.Sqrt(2 * x.Dp / x.Density);
            // delta^2 = 0.611^2 / Ret
            var laminar = 2 * 0.611 * 0.611 / 9.33 * x.Diameter * area * x.Dp / (x.Density * x.Viscosity);
            return flow <= turbulent * (1 + 1e-12) && flow <= laminar * (1 + 1e-12) && flow >= 0.84 * Math.Min(turbulent, laminar)
                ? null
                : $"flow {flow}: between {turbulent} and {laminar}";
        });
    }

    [Fact]
    public void Grows_with_the_hole_and_falls_with_viscosity() =>
        ForAll(Cases, x =>
            SharpOrifice.Flow(Area(x.Diameter * 1.01), x.Dp, x.Density, x.Viscosity).Flow > SharpOrifice.Flow(Area(x.Diameter), x.Dp, x.Density, x.Viscosity).Flow
            && SharpOrifice.Flow(Area(x.Diameter), x.Dp, x.Density, x.Viscosity * 1.01).Flow <= SharpOrifice.Flow(Area(x.Diameter), x.Dp, x.Density, x.Viscosity).Flow
                ? null : "flow: the wrong way");

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-6)]
    [InlineData(double.NaN)]
    public void No_area_is_shut(double area) => Assert.Equal(LinkFlow.None, SharpOrifice.Flow(area, 5e5, 850, 8e-6));

    [Fact]
    public void The_smallest_area_is_no_accident()
    {
        var flow = SharpOrifice.Flow(1e-18, 5e5, 850, 8e-6);
        Assert.True(flow.Flow > 0 && flow.Slope > 0 && double.IsFinite(flow.Slope));
    }

    [Fact]
    public void The_coefficient_falls_to_nothing_with_the_pressure_difference()
    {
        Assert.Equal(0.611, SharpOrifice.DischargeAt(1e-3, 5e5, 850, 8e-6), 1e-4);
        Assert.True(SharpOrifice.DischargeAt(1e-3, 0.01, 850, 8e-6) < 0.03);
    }

    private static double Area(double diameter) => Math.PI / 4 * diameter * diameter;
}
