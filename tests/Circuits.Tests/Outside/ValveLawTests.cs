using Circuits.Laws;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>Seats, ports, pistons and regulators against published values. "Esposito" is A. Esposito, "Fluid Power with Applications", 6th ed., 2005.</summary>
public class ValveLawTests
{
    private const double Pound = 4.4482216;
    private const double Inch = 0.0254;
    private const double Psi = 6894.757;

    // Computed by own geometry outside this code: ball 6.35 mm; areas in mm2. On 4 mm the hole bounds it from 1.373136 mm.
    [Theory]
    [InlineData(4, 0.1, .9718)]
    [InlineData(4, 0.25, 2.4133)]
    [InlineData(4, 0.5, 4.7703)]
    [InlineData(4, 1.0, 9.3140)]
    [InlineData(4, 1.373136, 12.5664)]
    [InlineData(4, 3, 12.5664)]
    [InlineData(5, 0.1, .9738)]
    [InlineData(5, 0.25, 2.4519)]
    [InlineData(5, 0.5, 4.9453)]
    [InlineData(5, 1.0, 9.9675)]
    public void A_ball_lifted_off_its_seat(double seat, double lift, double area) =>
        Assert.Equal(area, BallSeat.Open(lift, 6.35, seat), 1e-4);

    // Computed by search over all frusta: the least between a 6.35 mm ball and a 4 mm seat at 0.5 mm is 4.75353 mm2. That the smallest is not the
    // perpendicular one was read: F. Aranovich, Machine Design, 8 April 1999.
    [Fact]
    public void The_law_lies_less_than_half_a_percent_above_the_least_frustum() =>
        Assert.InRange(BallSeat.Open(0.5, 6.35, 4) / 4.75353, 1, 1.005);

    // Computed: a full groove on a 10 mm land open 0.5 mm, 15.70796 mm2. The rounding at the edge adds a ten-thousandth.
    [Fact]
    public void A_port_opens() =>
        Assert.Equal(15.70796, SpoolPort.Open(0.8e-3, 0.3e-3, Math.PI * 0.01, 2e-3).Area * 1e6, 15.7e-4 * 1.2);

    // Form from memory (Merritt, "Hydraulic Control Systems", 1967, ch. 5), value computed: Cd 0.61, Cv 0.98, 69 degrees make 0.428465 A dp, his "0.43";
    // 15.70796 mm2 at 5 bar: 3.365154 N.
    [Fact]
    public void The_jet_pulls_the_spool()
    {
        Assert.Equal(0.428465, FlowForce.Steady(1, 1, 0.61), 1e-6);
        Assert.Equal(3.365154, FlowForce.Steady(15.70796e-6, 5e5, 0.61), 1e-5);
    }

    // Read and worked out again: Esposito, ex. 8.1, p. 293: poppet 0.75 in2, 2500 lb/in, compressed 0.20 in, opens by 0.10 in: cracks at 667 psi,
    // full flow at 1000 psi (4.596505 and 6.894757 MPa).
    [Fact]
    public void A_relief_valve_cracks_and_opens_fully()
    {
        const double Rate = 2500 * Pound / Inch;
        const double Area = 0.75 * Inch * Inch;
        var preload = Rate * 0.20 * Inch;
        var spool = new RegulatorSizes(Area, Rate, 0.03, 0.10 * Inch, 0);
        Assert.Equal(4.596505e6, RegulatorLaw.SetPressure(spool, preload), 5.0);
        Assert.InRange(RegulatorLaw.Spill(spool, 4.58e6, preload, 0).Area / (0.03 * 0.10 * Inch), 0, 1e-3);
        Assert.Equal(0.03 * 0.10 * Inch, RegulatorLaw.Spill(spool, 6.894757e6 * 1.001, preload, 0).Area, 1e-7);
        // Half way between it is half open; the rounding of the port's corners adds less than a hundredth of a percent.
        Assert.Equal(0.03 * 0.05 * Inch, RegulatorLaw.Spill(spool, (4.596505e6 + 6.894757e6) / 2, preload, 0).Area, 1e-9);
    }

    // Read and worked out again: Esposito, ex. 9.3, p. 335: 0.75 in2, full flow at 1698 psi, cracks at 1.1 x 1132 psi, stroke 0.10 in: 3400 lb/in.
    // The book rounds both forces to whole pounds, hence the tolerance.
    [Fact]
    public void A_spring_rate_from_two_pressures()
    {
        var spool = new RegulatorSizes(0.75 * Inch * Inch, 3400 * Pound / Inch, 0.03, 0.10 * Inch, 0);
        var (crack, full) = (1.1 * 1132 * Psi, 1698 * Psi);
        var force = crack * spool.Area;
        Assert.Equal(0.03 * 0.09 * Inch, RegulatorLaw.Spill(spool, crack + (0.9 * (full - crack)), force, 0).Area, 0.03 * 0.09 * Inch * 1.5e-3);
    }

    // Common practice, no source: a spring of 40 N on a 10 mm spool holds 5.1 bar.
    [Fact]
    public void A_spool_that_is_reckoned_in_the_trade() =>
        Assert.Equal(5.1, RegulatorLaw.SetPressure(new RegulatorSizes(Math.PI / 4 * 1e-4, 3e3, 0.03, 1e-3, 0), 40) / 1e5, 0.05);

    // Read and worked out again: Esposito, ex. 8.6, p. 304: meter-out, 500 psi on 3.14 in2 less 1000 lb, against 3.14 - 0.79 in2: 242.55 psi on the
    // rod side holds the piston.
    [Fact]
    public void A_servo_with_a_smaller_release_side()
    {
        var piston = Piston(3.14 * Inch * Inch, 2.35 * Inch * Inch, preload: 0, rate: 1e3, stroke: 3e-3);
        Assert.Equal(1000, piston.Force([0, 500 * Psi, 242.55 * Psi], 0) / Pound, 0.1);
    }

    /// <summary>A piston between cells 1 and 2.</summary>
    internal static FlowPiston Piston(double apply, double release, double preload, double rate, double stroke) => new()
    {
        Name = "piston",
        Apply = 1,
        Release = 2,
        ApplyArea = apply,
        ReleaseArea = release,
        Preload = preload,
        Rate = rate,
        Stroke = stroke,
    };
}
