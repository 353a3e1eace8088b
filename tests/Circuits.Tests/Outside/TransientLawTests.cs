using Circuits.Laws;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// The laws followed over time, by small Runge-Kutta steps, against closed forms. Oil so thin that it is turbulent; 850 kg/m3; a hole of 1 mm
/// unless said otherwise. Closed forms computed, except the tanks, which were read and worked out again.
/// </summary>
public class TransientLawTests
{
    private const double Thin = 1e-9;
    private static readonly double Hole = Math.PI / 4 * 1e-6;

    // t = V / (K sqrt(dp)): 50 cm3 at 4 bar, 3.396279 s.
    [Fact]
    public void A_volume_fills_at_a_constant_difference() =>
        Assert.Equal(3.396279, 50e-6 / SharpOrifice.Flow(Hole, 4e5, 850, Thin).Flow, 1e-6);

    // sqrt(ps - p) falls evenly: 100 cm3, 1.2 GPa, to 10 bar from none: at half of 0.007159985 s, three quarters.
    [Fact]
    public void A_stiff_vessel_is_pressurised()
    {
        var pressure = After(0.007159985 / 2, 0, p => 1.2e9 / 100e-6 * SharpOrifice.Flow(Hole, 10e5 - p, 850, Thin).Flow);
        Assert.Equal(7.5e5, pressure, 10.0);
    }

    // A piston of 60 cm2 against 60 N/mm compressed by 5 mm, stroke 2.5 mm, from 8 bar: 0.750393765 s.
    [Fact]
    public void A_piston_strokes_against_its_spring()
    {
        const double Area = 60e-4;
        var travel = After(0.750393765, 0, x => SharpOrifice.Flow(Hole, 8e5 - (60e3 * (0.005 + x) / Area), 850, Thin).Flow / Area);
        Assert.Equal(2.5e-3, travel, 1e-9);
        Assert.Equal(2.5e-3, 0.004 * ValveLawTests.Piston(Area, 0, preload: 60e3 * 0.005, rate: 60e3, stroke: 0.004).At([0, 0.75e5, 0], 0).Share, 1e-8);
    }

    // The spring drives the oil out again: 2.590713640 s.
    [Fact]
    public void A_spring_empties_its_piston()
    {
        const double Area = 60e-4;
        var travel = After(2.590713640, 2.5e-3, x => -SharpOrifice.Flow(Hole, 60e3 * (0.005 + x) / Area, 850, Thin).Flow / Area);
        Assert.Equal(0, travel, 1e-9);
    }

    // A laminar gap of resistance R fills a vessel of capacity C: 0.632121 of the way after R C.
    [Fact]
    public void A_laminar_gap_fills_a_vessel()
    {
        var gap = Leakage.Annular(0.01, 20e-6, 0.01, 0, 1, 0.01).Slope;
        const double Capacity = 1e-13;
        var pressure = After(Capacity / gap, 0, p => Leakage.Annular(0.01, 20e-6, 0.01, 0, 1e6 - p, 0.01).Flow / Capacity);
        Assert.Equal(0.632121e6, pressure, 1.0);
    }

    // Cengel and Cimbala, "Fluid Mechanics", 2nd ed., 2010, ex. 5-2, p. 191: a tank of 0.9 m drains through 13 mm, 1.2 to 0.6 m: 11.6 min
    // (694.3505 s); the book's jet does not contract (Cd 1) and its g is 9.81.
    [Fact]
    public void A_tank_drains()
    {
        const double Tank = Math.PI / 4 * 0.9 * 0.9;
        var jet = Math.PI / 4 * 0.013 * 0.013;
        var level = After(694.3505, 1.2, h => -SharpOrifice.Flow(jet, 0.013, 1000 * 9.81 * h, 1000, Thin, discharge: 1).Flow / Tank);
        Assert.Equal(0.6, level, 1e-5);
    }

    // C. Schaschke, "Fluid Mechanics: Worked Examples for Engineers", 2000, ex. 6.6, p. 153: 8 and 4 m2 joined by 0.01 m2, Cd 0.62: a difference of
    // 0.3 m falls to 0.1 in 44.957 s; 0.01504 m3/s at first.
    [Fact]
    public void Two_tanks_level()
    {
        double Flow(double h) => SharpOrifice.Flow(0.01, 0.1, 1000 * 9.81 * h, 1000, Thin, discharge: 0.62).Flow;
        Assert.Equal(0.01504, Flow(0.3), 5e-6);
        Assert.Equal(0.1, After(44.957, 0.3, h => -Flow(h) * ((1 / 8.0) + (1 / 4.0))), 1e-5);
    }

    /// <summary>The value after a time, by the classical Runge-Kutta method in 2000 steps.</summary>
    private static double After(double seconds, double start, Func<double, double> rate)
    {
        const int Steps = 2000;
        var (h, y) = (seconds / Steps, start);
        for (var i = 0; i < Steps; i++)
        {
            var a = rate(y);
            var b = rate(y + (h / 2 * a));
            var c = rate(y + (h / 2 * b));
            var d = rate(y + (h * c));
            y += h / 6 * (a + (2 * b) + (2 * c) + d);
        }

        return y;
    }
}
