using Circuits.Laws;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Short tubes, friction and leakage against published values. "Esposito" is A. Esposito, "Fluid Power with Applications", 6th ed., 2005;
/// "Munson" is Munson, Young and Okiishi, "Fundamentals of Fluid Mechanics", 5th ed.; "Fox" is Fox and McDonald, "Introduction to Fluid
/// Mechanics", 5th ed. Values marked "computed" were worked out from the formula by other means than this code.
/// </summary>
public class PassageLawTests
{
    private const double Inch = 0.0254;
    private const double Psi = 6894.757;

    // Computed from M. G. Rabie, "Fluid Power Engineering", 2009, eqs 2.40 and 2.41 (decimal points of the copy read restored from memory).
    // Between 50 and 100 this law goes over from one to the other, hence the tolerance there.
    [Theory]
    [InlineData(1, .122831, 1e-6)]
    [InlineData(10, .339422, 1e-6)]
    [InlineData(25, .454545, 2e-5)]
    [InlineData(50, .529999, 2e-3)]
    [InlineData(100, .589870, 2e-3)]
    [InlineData(500, .687700, 1e-6)]
    [InlineData(1000, .718979, 1e-6)]
    [InlineData(5000, .768251, 1e-6)]
    [InlineData(1e4, .781489, 1e-6)]
    public void Discharge_of_a_short_tube(double reynoldsByLength, double discharge, double within)
    {
        Assert.Equal(discharge, ShortTube.Discharge(reynoldsByLength), within);
        // The same through the flow: 1 mm wide, 2 mm long; dp = rho v^2 / (2 Cd^2).
        const double Viscosity = 1e-5;
        var speed = reynoldsByLength * Viscosity * 0.002 / 1e-6;
        var dp = 850 / 2.0 * Math.Pow(speed / ShortTube.Discharge(reynoldsByLength), 2);
        Assert.Equal(speed, ShortTube.Flow(1e-3, 2e-3, dp, 850, Viscosity).Flow / (Math.PI / 4 * 1e-6), speed * 1e-10);
    }

    // Read and worked out again: Esposito, ex. 4.3, p. 134: 100 ft of 1 in pipe, 10 ft/s, 100 cSt, SG 0.9: 60 psi.
    /// <summary>
    /// 0.2 mm around 12 mm at 600 kPa, oil of 803 kg/m3 and 5 mm2/s: friction alone would pass 113 L/min along 2 mm; Bernoulli's v = sqrt(2 dp / rho) allows 17.5 through
    /// that section. With a head and a half lost at the ends, and friction on top: dp = 12 mu L Q / (pi D c^3) + 1.5 rho (Q / A)^2 / 2, put back in here.
    /// </summary>
    [Fact]
    public void A_wide_gap_passes_no_more_than_Bernoulli_allows()
    {
        var (area, mu) = (Math.PI * 0.012 * 2e-4, 803 * 5e-6);
        var laminar = Leakage.Annular(0.012, 2e-4, 0.002, 0, 6e5, mu);
        var flow = Leakage.WithInertia(laminar, area, 6e5, 803).Flow;
        Assert.Equal(17.5, area * Math.Sqrt(2 * 6e5 / 803) * 6e4, 0.05);
        Assert.True(laminar.Flow * 6e4 > 100);
        Assert.InRange(flow * 6e4, 10, 17.5 / Math.Sqrt(1.5));
        Assert.Equal(6e5, (12 * mu * 0.002 * flow / (Math.PI * 0.012 * 8e-12)) + (1.5 * 803 / 2 * (flow / area) * (flow / area)), 1);

        // In a spool's clearance, friction is all.
        var narrow = Leakage.Annular(0.012, 1e-5, 0.004, 0, 6e5, mu);
        Assert.Equal(narrow.Flow, Leakage.WithInertia(narrow, Math.PI * 0.012 * 1e-5, 6e5, 803).Flow, 0.001 * narrow.Flow);
    }

    [Fact]
    public void Laminar_pipe_in_inches()
    {
        var area = Math.PI / 4 * Inch * Inch;
        var flow = LineFriction.Flow(area, Inch, 100 * 12 * Inch, 60.12 * Psi, 900, 100e-6).Flow;
        Assert.Equal(10 * 12 * Inch, flow / area, 0.003);
        Assert.Equal(774, flow / area * Inch / 100e-6, 1.0);
    }

    // Read and worked out again: Esposito, ex. 4.4, p. 134: 50 m of 50 mm, 5 m/s, 1e-3 m2/s, 8800 N/m3: 28.7 bar (28.735 with g 9.8).
    [Fact]
    public void Laminar_pipe_in_metres()
    {
        var area = Math.PI / 4 * 0.05 * 0.05;
        Assert.Equal(5, LineFriction.Flow(area, 0.05, 50, 28.735e5, 8800 / 9.8, 1e-3).Flow / area, 1e-3);
    }

    // Computed: Q = pi d^4 dp / (128 mu L): 3 mm, 0.2 m, 0.5 bar, 32 cSt, 850 kg/m3.
    [Fact]
    public void Hagen_and_Poiseuille() =>
        Assert.Equal(1.827242e-5, LineFriction.Flow(Math.PI / 4 * 9e-6, 3e-3, 0.2, 0.5e5, 850, 32e-6).Flow, 1e-11);

    // Read and worked out again: Munson, ex. 6.10, p. 331: 4 mm tube, 1 m, 0.0045 Pa s, 12 mL/s: 8.594 kPa (density 1000 taken; laminar flow has none).
    [Fact]
    public void A_tube_of_4_mm() =>
        Assert.Equal(12e-6, LineFriction.Flow(Math.PI / 4 * 16e-6, 4e-3, 1, 8594, 1180, 0.0045 / 1180).Flow, 12e-6 * 1e-3);

    // Computed with an open fluid library: Colebrook's f at a Reynolds number and a relative roughness. The first and the second stand in its tests.
    [Theory]
    [InlineData(1e5, 1e-4, 0.018513866077)]
    [InlineData(128, 0, 0.5)]
    [InlineData(1e4, 0, 0.030882950)]
    [InlineData(4000, 0, 0.039907014)]
    [InlineData(5e4, 1e-3, 0.024020784)]
    [InlineData(1e6, 1e-5, 0.011869545)]
    public void Friction_factor(double reynolds, double roughness, double factor)
    {
        // 10 mm wide, 1 m long: dp = f (L / D) rho v^2 / 2.
        const double Viscosity = 1e-5;
        var speed = reynolds * Viscosity / 0.01;
        var flow = LineFriction.Flow(1e-4, 0.01, 1, factor / 0.01 * 850 * speed * speed / 2, 850, Viscosity, roughness).Flow;
        Assert.Equal(reynolds, flow / 1e-4 * 0.01 / Viscosity, reynolds * 1e-6);
    }

    // Computed from the exact series Q = w h^3 dp / (12 mu L) (1 - ...), itself from memory.
    [Theory]
    [InlineData(0, 96)]
    [InlineData(0.125, 82.3386)]
    [InlineData(0.25, 72.9311)]
    [InlineData(0.5, 62.1922)]
    [InlineData(0.75, 57.9028)]
    [InlineData(1, 56.9083)]
    public void Laminar_factor_of_a_rectangle(double aspect, double factor) => Assert.Equal(factor, LineFriction.RectangleFactor(aspect), factor * 6e-4);

    // Read and worked out again: Fox, ex. 8.1, p. 317: D 25 mm, c 0.005 mm, L 15 mm, 20 to 1 MPa, 0.018 Pa s: 57.6 mm3/s.
    // Eccentric, computed: 0.5 gives 79.1610, 1 gives 143.9291 mm3/s; the factor 2.5 of the last was read elsewhere.
    [Theory]
    [InlineData(0, 57.5716)]
    [InlineData(0.5, 79.1610)]
    [InlineData(1, 143.9291)]
    public void A_spool_leaks(double eccentricity, double cubicMillimetres) =>
        Assert.Equal(cubicMillimetres, Leakage.Annular(0.025, 5e-6, 0.015, eccentricity, 19e6, 0.018).Flow * 1e9, 1e-4);

    // Read and worked out again: N. de Nevers, "Fluid Mechanics for Chemical Engineers", 3rd ed., ex. 6.13, p. 207: valve stem 0.25 in, c 0.0001 in,
    // 1 in, 100 psi, 0.6 cP: 0.2706 in3/h.
    [Fact]
    public void A_valve_stem_leaks() =>
        Assert.Equal(0.2706, Leakage.Annular(0.25 * Inch, 1e-4 * Inch, Inch, 0, 100 * Psi, 6e-4).Flow / (Inch * Inch * Inch) * 3600, 5e-4);

    // Speed read (0.049 m/s), flow computed (296.654 L/h; the flow printed in the source is wrong): h 0.15 mm, w 11.2 m, L 1.5 m,
    // a head of 4 m of water, 0.001 Pa s.
    [Fact]
    public void A_slot_leaks()
    {
        var flow = Leakage.Slot(11.2, 0.15e-3, 1.5, 9810 * 4, 1e-3).Flow;
        Assert.Equal(0.049, flow / (11.2 * 0.15e-3), 5e-4);
        Assert.Equal(296.654, flow * 3.6e6, 5e-3);
    }

    // Common practice, no source: spool leak grows with the cube of clearance: 15 mm bore, 5 mm land, 5 bar, 5 mPa s: 30 um 0.13 L/min, 60 um 1.02.
    [Theory]
    [InlineData(30e-6, 0.13)]
    [InlineData(60e-6, 1.02)]
    public void Leaks_that_are_reckoned_in_the_trade(double clearance, double litresPerMinute) =>
        Assert.Equal(litresPerMinute, Leakage.Annular(0.015, clearance, 0.005, 0, 5e5, 5e-3).Flow * 6e4, 5e-3);

    // Common practice, no source: 15 mL/rev, 650 rpm, 80 %: 7.8 L/min. At half the viscosity twice as much slips back: 60 %.
    [Fact]
    public void A_pump_as_it_is_reckoned_in_the_trade()
    {
        var slip = PumpLaw.Slip(15e-6, 0.8, 650 / 60.0, 1e6, 0.01);
        Assert.Equal(7.8, PumpLaw.Given(15e-6, 650 / 60.0, slip, 1e6, 0.01).Flow * 6e4, 1e-9);
        Assert.Equal(7.8 * 0.6 / 0.8, PumpLaw.Given(15e-6, 650 / 60.0, slip, 1e6, 0.005).Flow * 6e4, 1e-9);
        Assert.Equal(7.8 / 0.8, PumpLaw.Given(15e-6, 650 / 60.0, slip, 0, 0.01).Flow * 6e4, 1e-9);
    }
}
