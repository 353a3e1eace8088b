using Circuits.Laws;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Clutches, turning oil and accumulators against published values. "Khurmi" is R. S. Khurmi and J. K. Gupta, "Theory of Machines", 14th ed., 2009,
/// ch. 10; "Sullivan" is J. Sullivan, "Fluid Power: Theory and Applications", 4th ed. All were read and worked out again, unless marked.
/// </summary>
public class ClutchLawTests
{
    private const double Rpm = Math.PI / 30;

    // Khurmi, ex. 10.23, p. 303: 300/200 mm, 0.1 MPa, mu 0.3, two faces, 2500 rpm: 61.685 kW. Ex. 10.28, p. 308: radii 125/75 mm, 0.127 MPa,
    // mu 0.3, four faces, 500 rpm: 18.8 kW. Uniform wear.
    [Theory]
    [InlineData(0.150, 0.100, 0.1e6, 2, 2500, 61.685e3, 1)]
    [InlineData(0.125, 0.075, 0.127e6, 4, 500, 18.8e3, 5)]
    public void Worn_in_plates(double outer, double inner, double pressure, int faces, double rpm, double watts, double within)
    {
        var force = ClutchTorque.WornForce(pressure, outer, inner);
        var torque = ClutchTorque.Capacity(force, 0.3, faces, ClutchTorque.WornRadius(outer, inner));
        Assert.Equal(watts, torque * rpm * Rpm, within);
    }

    // Khurmi, ex. 10.29, p. 308: three and two discs (four faces), 240/120 mm, mu 0.3, 25 kW at 1575 rpm: 0.062 MPa.
    [Fact]
    public void Pressure_between_worn_in_plates()
    {
        var torque = 25e3 / (1575 * Rpm);
        var capacity = ClutchTorque.Capacity(ClutchTorque.WornForce(0.0620476e6, 0.12, 0.06), 0.3, 4, ClutchTorque.WornRadius(0.12, 0.06));
        Assert.Equal(torque, capacity, torque * 1e-6);
    }

    // Khurmi, ex. 10.30, p. 309: the same clutch with new plates needs 1353 N (1353.358) on a mean radius of 93.3333 mm; worn by 8 x 1.25 mm, six
    // springs of 13 kN/m give 573.358 N, which carry 10.21 kW.
    [Fact]
    public void New_plates_and_their_wear()
    {
        Assert.Equal(0.0933333, ClutchTorque.NewRadius(0.12, 0.06), 1e-7);
        var torque = 25e3 / (1575 * Rpm);
        Assert.Equal(torque, ClutchTorque.Capacity(1353.358, 0.3, 4, ClutchTorque.NewRadius(0.12, 0.06)), 1e-4);
        var worn = 1353.358 - (6 * 13e3 * 8 * 1.25e-3);
        Assert.Equal(10.21e3, ClutchTorque.Capacity(worn, 0.3, 4, ClutchTorque.WornRadius(0.12, 0.06)) * 1575 * Rpm, 5.0);
    }

    // U. C. Jindal, "Machine Design", 2010, ex. 22-5, p. 591: four and three discs (six faces), radii 80/50 mm, mu 0.25, 15 kW at 1400 rpm: 1031.1 N,
    // mean radius 66.1538 mm.
    [Fact]
    public void Six_new_faces()
    {
        Assert.Equal(66.1538e-3, ClutchTorque.NewRadius(0.08, 0.05), 1e-7);
        Assert.Equal(15e3 / (1400 * Rpm), ClutchTorque.Capacity(1031.1, 0.25, 6, ClutchTorque.NewRadius(0.08, 0.05)), 5e-3);
    }

    // Computed: piston 130/80 mm, 8 bar, return spring 800 N, eight faces 140/110 mm, mu 0.12: 349.5103 N m new, 347.8407 worn.
    [Fact]
    public void A_hydraulic_clutch()
    {
        const double Area = Math.PI / 4 * ((0.130 * 0.130) - (0.080 * 0.080));
        Assert.Equal(349.5103, ClutchTorque.Capacity((8e5 * Area) - 800, 0.12, 8, ClutchTorque.NewRadius(0.070, 0.055)), 1e-4);
        Assert.Equal(347.8407, ClutchTorque.Capacity((8e5 * Area) - 800, 0.12, 8, ClutchTorque.WornRadius(0.070, 0.055)), 1e-4);
        Assert.Equal(0, ClutchTorque.Capacity((0.5e5 * Area) - 800, 0.12, 8, 0.0625));
    }

    // Common practice, no source: 8 bar on 100 cm2 less 1000 N, mu 0.12, ten faces, 70 mm: 588 N m.
    [Fact]
    public void A_clutch_that_is_reckoned_in_the_trade() =>
        Assert.Equal(588, ClutchTorque.Capacity((8e5 * 100e-4) - 1000, 0.12, 10, 0.070), 0.5);

    // R. S. Dighe, "Hydraulics Made Easy", 2005, ex. 3.12, p. 89: radii 1 and 2 ft, 200 rpm: 20.4 ft of head (20.434).
    [Fact]
    public void Head_of_a_turning_vessel() =>
        Assert.Equal(20.434, CentrifugalHead.Pressure(1, 200 * Rpm, 2, 1) / 32.2, 0.01);

    // Cengel and Cimbala, "Fluid Mechanics", 2nd ed., 2010, ex. 3-13, p. 109: a vessel of radius 0.1 m filled to 0.5 of 0.6 m spills at 189 rpm
    // (19.80909 rad/s): there the surface stands 0.2 m higher at the wall than in the middle.
    [Fact]
    public void Rise_of_a_turning_vessel() =>
        Assert.Equal(0.2, CentrifugalHead.Pressure(1, 19.80909, 0.1, 0) / 9.81, 1e-6);

    // Computed, and checked by quadrature: 850 kg/m3, 4000 rpm, oil from 20 mm, piston 65/40 mm: 2.852316 bar at 65 mm, 1545.0815 N.
    [Fact]
    public void Oil_that_turns_with_a_clutch()
    {
        Assert.Equal(2.852316e5, CentrifugalHead.Pressure(850, 4000 * Rpm, 0.065, 0.020), 0.1);
        Assert.Equal(1545.0815, CentrifugalHead.Force(850, 4000 * Rpm, 0.065, 0.040, 0.020), 1e-3);
    }
}
