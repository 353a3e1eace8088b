using Circuits.Laws;
using Circuits.Solving.Flow;
using CsCheck;
using Xunit;
using static Circuits.Tests.Laws.FlowLaw;

namespace Circuits.Tests.Laws;

public class PassageLawTests
{
    private static readonly Gen<(double Dp, double Diameter, double Length, double Viscosity)> Cases =
        Gen.Select(Difference, Diameter, Decades(1e-3, 1), FlowLaw.Viscosity);

    [Fact]
    public void A_short_tube_is_odd_rising_and_smooth() =>
        ForAll(Cases, x => Fault(dp => ShortTube.Flow(x.Diameter, x.Diameter * (1 + (x.Length * 10)), dp, 850, x.Viscosity), x.Dp));

    [Fact]
    public void A_short_tube_ends_as_a_long_one_does_in_thick_oil() =>
        ForAll(Cases, x =>
        {
            var tube = ShortTube.Flow(x.Diameter, x.Length, 0, 850, x.Viscosity).Slope;
            var line = LineFriction.Flow(Math.PI / 4 * x.Diameter * x.Diameter, x.Diameter, x.Length, 0, 850, x.Viscosity).Slope;
            return Math.Abs((tube / line) - 1) < 1e-9 ? null : $"slope: {tube} against {line}";
        });

    [Fact]
    public void Friction_is_odd_rising_and_smooth() =>
        ForAll(Gen.Select(Cases, Gen.Double[0, 0.02], Gen.Double[57, 96]), x =>
        {
            var ((wanted, diameter, length, viscosity), roughness, factor) = x;
            LinkFlow Law(double dp) => LineFriction.Flow(1e-4, diameter, length, dp, 850, viscosity, roughness, factor);
            return Fault(Law, wanted);
        });

    // The three pieces of the law meet in value and slope.
    [Fact]
    public void Friction_has_no_step_and_no_corner_where_its_pieces_meet() =>
        ForAll(Gen.Select(Cases, Gen.Double[0, 0.01], Gen.Double[57, 96]), x =>
        {
            var ((_, diameter, length, viscosity), roughness, factor) = x;
            var unit = 850 * length * viscosity * viscosity / (2 * diameter * diameter * diameter);
            foreach (var meeting in (double[])[factor * 2000 * unit, 799 * 799 * unit])
            {
                var below = LineFriction.Flow(1e-4, diameter, length, meeting * (1 - 1e-9), 850, viscosity, roughness, factor);
                var above = LineFriction.Flow(1e-4, diameter, length, meeting * (1 + 1e-9), 850, viscosity, roughness, factor);
                if (Math.Abs((above.Flow / below.Flow) - 1) > 1e-7) return $"step: {below} and {above}";
                if (Math.Abs((above.Slope / below.Slope) - 1) > 1e-6) return $"corner: {below} and {above}";
            }

            return null;
        });

    // Where turbulence comes in, flow for a given difference grows more slowly but never falls.
    [Fact]
    public void Friction_rises_all_through_the_change_to_turbulence() =>
        ForAll(Gen.Select(Gen.Double[0, 0.01], Gen.Double[57, 96], Gen.Double[300, 1000]), x =>
            LineFriction.Flow(1e-4, 0.01, 1, 850 * 1e-10 / 2e-6 * x.Item3 * x.Item3, 850, 1e-5, x.Item1, x.Item2).Slope > 0 ? null : "slope: not above zero");

    // Re 10 000 in a track of 10 mm, f 0.030882950 by Colebrook (computed with an open fluid library); laminar friction alone would let 4.8 times as much pass.
    [Fact]
    public void A_circuit_s_track_turns_turbulent()
    {
        const double Area = Math.PI / 4 * 1e-4;
        var oil = FlowConditions.None;
        var speed = 1e4 * oil.Viscosity / 0.01;
        var flow = oil.Track(Area, 1, 0.030882950 / 0.01 * oil.Density * speed * speed / 2);
        Assert.Equal(speed, flow.Flow / Area, speed * 1e-6);
    }

    [Fact]
    public void A_gap_with_inertia_is_odd_rising_and_as_steep_as_it_says() =>
        ForAll(Cases, x => Fault(dp => Leakage.WithInertia(Leakage.Annular(x.Diameter, 1e-4, x.Length, 0, dp, 850 * x.Viscosity), Math.PI * x.Diameter * 1e-4, dp, 850), x.Dp));

    [Fact]
    public void Leakage_is_odd_and_linear() =>
        ForAll(Cases, x => Fault(dp => Leakage.Annular(x.Diameter, 1e-5, x.Length, 0.5, dp, 850 * x.Viscosity), x.Dp)
            ?? Fault(dp => Leakage.Slot(x.Diameter, 1e-5, x.Length, dp, 850 * x.Viscosity), x.Dp));

    [Fact]
    public void Eccentricity_two_and_a_half_times_the_leak() =>
        Assert.Equal(2.5, Leakage.Annular(0.02, 1e-5, 0.01, 1, 1e6, 0.01).Flow / Leakage.Annular(0.02, 1e-5, 0.01, 0, 1e6, 0.01).Flow, 1e-12);

    [Fact]
    public void A_pump_gives_less_against_pressure_and_more_when_it_turns_faster() =>
        ForAll(Gen.Select(Decades(1e5, 2e6), Gen.Double[5, 50], Gen.Double[0.6, 0.99]), x =>
        {
            var slip = PumpLaw.Slip(16e-6, x.Item3, 10, 1e6, 0.006);
            var here = PumpLaw.Given(16e-6, x.Item2, slip, x.Item1, 0.006);
            var numeric = (PumpLaw.Given(16e-6, x.Item2, slip, x.Item1 + 10, 0.006).Flow - here.Flow) / 10;
            return here.Slope < 0 && Math.Abs((numeric / here.Slope) - 1) < 1e-4
                && PumpLaw.Given(16e-6, x.Item2 + 1, slip, x.Item1, 0.006).Flow > here.Flow ? null : $"pump: {here}, {numeric}";
        });
}
