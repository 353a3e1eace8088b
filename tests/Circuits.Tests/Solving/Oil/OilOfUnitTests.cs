using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving.Oil;
using Circuits.Tests.Laws;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Solving.Oil;

public class OilOfUnitTests
{
    private static readonly Unit Bare = new("bare", DataOrigin.Invented, new("bare.yaml", 1, 1));

    [Fact]
    public void A_unit_without_an_oil_gets_one_and_says_so()
    {
        var assumed = new List<Assumption>();
        var oil = OilOfUnit.Read(Bare, assumed);
        Assert.Equal(90, OilOfUnit.Temperature(Bare, assumed));
        Assert.Equal(
            ["assumed 870 kg/m3 at 15 degC for the oil: no density given",
                "assumed ISO VG 32 for the oil: no grade given",
                "assumed a viscosity index of 100 for the oil: no index and no second viscosity given",
                "assumed 90 degC for the oil: no temperature given"],
            assumed.Select(assumption => assumption.Words()));
        Assert.Equal(32e-6, oil.At(40).KinematicViscosity, 1e-12);
        Assert.Equal(100, ViscosityIndex.Of(32e-6, oil.At(100).KinematicViscosity), 1e-3);
        Assert.Equal(870, oil.At(15).Density, 1e-9);
    }

    [Fact]
    public void Two_given_points_go_before_the_grade()
    {
        var assumed = new List<Assumption>();
        var unit = Bare with { Fluid = new Fluid(46, new(80), [new(new(40), new(32)), new(new(100), new(5.4))], new(860), Bare.Place) };
        var oil = OilOfUnit.Read(unit, assumed);
        Assert.Equal(80, OilOfUnit.Temperature(unit, assumed));
        Assert.Empty(assumed);
        Assert.Equal(32e-6, oil.At(40).KinematicViscosity, 1e-12);
        Assert.Equal(5.4e-6, oil.At(100).KinematicViscosity, 1e-12);
        Assert.Equal(860, oil.At(15).Density, 1e-9);
        Assert.Equal(oil.At(80).Density * oil.At(80).KinematicViscosity, oil.At(80).DynamicViscosity);
    }

    [Fact]
    public void A_given_index_makes_the_curve_of_the_grade()
    {
        var assumed = new List<Assumption>();
        var unit = Bare with { Fluid = new Fluid(32, null, [], new(860), Bare.Place) { ViscosityIndex = 150 } };
        var oil = OilOfUnit.Read(unit, assumed);
        Assert.Empty(assumed);
        Assert.Equal(150, ViscosityIndex.Of(32e-6, oil.At(100).KinematicViscosity), 0.01);
    }

    [Fact]
    public void Every_curve_thins_when_it_warms() =>
        FlowLaw.ForAll(Gen.Select(FlowLaw.Decades(2, 3200), Gen.Double[0, 250], Gen.Double[-40, 149]), x =>
        {
            var curve = OilOfUnit.OfGrade(x.Item1, x.Item2);
            var (cool, warm) = (curve.At(x.Item3), curve.At(x.Item3 + 1));
            return cool > warm && warm > 0 && double.IsFinite(cool) ? null : $"viscosity: {cool}, a degree warmer {warm}";
        });

    [Fact]
    public void A_higher_index_is_thinner_cold_and_thicker_hot() =>
        FlowLaw.ForAll(Gen.Select(FlowLaw.Decades(15, 1000), Gen.Double[20, 200]), x =>
        {
            var (low, high) = (OilOfUnit.OfGrade(x.Item1, x.Item2), OilOfUnit.OfGrade(x.Item1, x.Item2 + 5));
            return low.At(100) < high.At(100) && low.At(-20) > high.At(-20) ? null : "index: the wrong way";
        });

    [Fact]
    public void An_index_comes_back_from_its_viscosity() =>
        FlowLaw.ForAll(Gen.Select(FlowLaw.Decades(15, 500), Gen.Double[10, 200]), x =>
        {
            var index = ViscosityIndex.Of(x.Item1 * 1e-6, ViscosityIndex.ViscosityAt100(x.Item1 * 1e-6, x.Item2));
            // Where two of the standard's formulas meet, an index between their two values has no viscosity.
            return Math.Abs(index - x.Item2) < 0.6 ? null : $"index: {index}";
        });

    [Fact]
    public void Modulus_is_the_slope_of_the_volume_and_rises_with_pressure() =>
        FlowLaw.ForAll(Gen.Select(FlowLaw.Decades(2e4, 1e7), FlowLaw.Decades(1e-4, 0.2)), x =>
        {
            var (p, air) = x;
            var step = p * 1e-4;
            var slope = (BulkModulus.RelativeVolume(p + step, air) - BulkModulus.RelativeVolume(p - step, air)) / (2 * step);
            var modulus = BulkModulus.Effective(p, air);
            if (Math.Abs((-BulkModulus.RelativeVolume(p, air) / slope / modulus) - 1) > 1e-6) return "modulus: not the slope";
            return BulkModulus.Effective(p + step, air) > modulus && modulus < BulkModulus.Pure ? null : "modulus: not rising";
        });

    [Fact]
    public void Oil_at_a_temperature_carries_its_air()
    {
        var oil = OilOfUnit.Read(Bare, []).At(90);
        Assert.Equal(BulkModulus.Effective(601_325, 0.01), oil.BulkModulusAt(500_000));
    }
}
