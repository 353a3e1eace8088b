using Circuits.Solving.Laws;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>Seats, ports, springs and regulators against published values. "Esposito" is A. Esposito, "Fluid Power with Applications", 6th ed., 2005.</summary>
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
        Assert.Equal(area, BallSeat.Open(lift * 1e-3, 6.35e-3, seat * 1e-3).Area * 1e6, 1e-4);

    // Computed by search over all frusta: the least between a 6.35 mm ball and a 4 mm seat at 0.5 mm is 4.75353 mm2. That the smallest is not the
    // perpendicular one was read: F. Aranovich, Machine Design, 8 April 1999.
    [Fact]
    public void The_law_lies_less_than_half_a_percent_above_the_least_frustum() =>
        Assert.InRange(BallSeat.Open(0.5e-3, 6.35e-3, 4e-3).Area * 1e6 / 4.75353, 1, 1.005);

    // Formula from memory, values computed from it elsewhere: 4 mm seat; areas in mm2.
    [Theory]
    [InlineData(30, .2, 1.229430)]
    [InlineData(30, .5, 2.971549)]
    [InlineData(45, .2, 1.732724)]
    [InlineData(45, .5, 4.165203)]
    public void A_cone_lifted_off_its_seat(double degrees, double lift, double area) =>
        Assert.Equal(area, ConeSeat.Open(lift * 1e-3, 4e-3, degrees * Math.PI / 180).Area * 1e6, 1e-6);

    // Computed: 5 N on a 4 mm seat, 3.97887 bar.
    [Fact]
    public void A_ball_cracks() => Assert.Equal(3.97887e5, BallSeat.Cracking(5, 4e-3), 0.5);

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
        Assert.Equal(4.596505e6, SpringBalance.Cracking(preload, Area), 5.0);
        Assert.Equal(6.894757e6, SpringBalance.Cracking(preload, Area) + SpringBalance.Droop(Rate, 0.10 * Inch, Area), 5.0);
        var half = (4.596505e6 + 6.894757e6) / 2;
        Assert.Equal(0.05 * Inch, SpringBalance.Travel(half * Area, preload, Rate, 0.10 * Inch).Travel, 1e-8);
        // The same valve as a regulator is open half of its travel there, and just opens where it cracks.
        var spool = new RegulatorSpool(Area, preload, Rate, 0.03, 0.10 * Inch, 0);
        Assert.Equal(4.596505e6, RegulatorLaw.SetPressure(spool, 0), 5.0);
        Assert.Equal(0.03 * 0.05 * Inch, RegulatorLaw.Spill(spool, half, 0).Area, 1e-9);
    }

    // Read and worked out again: Esposito, ex. 9.3, p. 335: 0.75 in2, full flow at 1698 psi, cracks at 1.1 x 1132 psi, stroke 0.10 in: 3400 lb/in.
    // The book rounds both forces to whole pounds, hence the tolerance.
    [Fact]
    public void A_spring_rate_from_two_pressures() =>
        Assert.Equal((1698 - (1.1 * 1132)) * Psi, SpringBalance.Droop(3400 * Pound / Inch, 0.10 * Inch, 0.75 * Inch * Inch), 3121946 * 1.5e-3);

    // Common practice, no source: a spring of 40 N on a 10 mm spool holds 5.1 bar.
    [Fact]
    public void A_spool_that_is_reckoned_in_the_trade() =>
        Assert.Equal(5.1, SpringBalance.Cracking(40, Math.PI / 4 * 1e-4) / 1e5, 0.05);

    // Read and worked out again: Esposito, ex. 8.6, p. 304: meter-out, 500 psi on 3.14 in2 less 1000 lb, against 3.14 - 0.79 in2: 242.55 psi on the
    // rod side holds the piston.
    [Fact]
    public void A_servo_with_a_smaller_release_side()
    {
        var force = SpringBalance.Force(500 * Psi, 3.14 * Inch * Inch, 242.55 * Psi, 2.35 * Inch * Inch);
        Assert.Equal(1000, force / Pound, 0.1);
    }
}
