using Circuits.Tests.Driveline;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Ratios against worked examples. "Khurmi" is R. S. Khurmi and J. K. Gupta, "Theory of Machines", 14th ed., Eurasia
/// 2009, chapter 13, as executed in the FOSSEE Python Textbook Companions.
/// </summary>
public class PlanetaryRatios
{
    // Khurmi prints three or four figures.
    private const double Printed = 5e-4;

    [Fact]
    public void Arm_at_18_with_the_ring_held_turns_the_sun_at_58_5()
    {
        // Khurmi, example 13.6, p. 443: sun 32, ring 72 fixed, arm 18 rpm; sun 58.5 rpm.
        var train = Gears.Train("set 32/72", input: "set.carrier", output: "set.sun", clutches: "brake: set.ring case");
        Assert.Equal(58.5, 18 / Gears.Ratio(train, "brake"), Printed);
    }

    [Fact]
    public void Sun_at_1_with_the_ring_held_turns_the_arm_at_0_308()
    {
        // Khurmi, example 13.7, p. 444, second part: sun 40, ring 90 fixed, sun 1 turn; arm 0.308 turn the same way.
        var train = Gears.Train("set 40/90", input: "set.sun", output: "set.carrier", clutches: "brake: set.ring case");
        Assert.Equal(0.308, 1 / Gears.Ratio(train, "brake"), Printed);
        Assert.Equal(40.0 / 130, 1 / Gears.Ratio(train, "brake"), 1e-15);
    }

    [Fact]
    public void Sun_at_1_with_the_ring_at_minus_half_turns_the_arm_at_minus_0_04()
    {
        // Khurmi, example 13.7, p. 444, first part: sun 1 turn, ring half a turn back; arm 0.04 turn opposite to the sun.
        // The half turn back comes from a second set: its carrier is held, so its ring turns at -(50/100) of its sun.
        var train = Gears.Train(
            "set 40/90, half 50/100", input: "set.sun", output: "set.carrier",
            joined: "half.sun=set.sun, half.ring=set.ring", clutches: "brake: half.carrier case");
        var motion = train.Solve(["brake"]);
        Assert.Equal(-0.5, Gears.Speed(motion, "set.ring"), 1e-15);
        Assert.Equal(-0.04, 1 / motion.Ratio!.Value, 2e-3);
        Assert.Equal(-5.0 / 130, 1 / motion.Ratio!.Value, 1e-15);
    }

    [Fact]
    public void Five_to_one_needs_four_times_the_torque_at_the_ring()
    {
        // Khurmi, example 13.20, p. 465: sun 16, ring 64, ratio 5; 100 N m at the sun, 400 N m hold the ring.
        var train = Gears.Train("set 16/64", input: "set.sun", output: "set.carrier", clutches: "brake: set.ring case");
        Assert.Equal(5, Gears.Ratio(train, "brake"), 1e-15);
        Assert.Equal(400, 100 * Assert.Single(train.TorqueShares(["brake"])).Value, 1e-12);
    }

    [Fact]
    public void Stepped_pinions_give_50_from_110()
    {
        // Khurmi, example 13.10, p. 448: sun C 50 meshes pinion D 20, which is one with pinion E 35 in the fixed ring
        // G 105; 110 rpm in, 50 rpm out. Stepped pinions act as a plain set of sun Zc Ze and ring Zg Zd teeth.
        var train = Gears.Train(
            $"set {50 * 35}/{105 * 20}", input: "set.sun", output: "set.carrier", clutches: "brake: set.ring case");
        Assert.Equal(50, 110 / Gears.Ratio(train, "brake"), 1e-12);
    }

    [Fact]
    public void Two_rings_on_one_arm_creep_against_each_other()
    {
        // Khurmi, example 13.8, p. 446: suns 28 and 26 are one, rings A 64 and B 62, one arm. A fixed, arm at 100 one
        // way: B 4.1 the same way (4.14747 worked out again).
        var held = Gears.Train(
            "a 28/64, b 26/62", input: "a.carrier", output: "b.ring", joined: "a.sun=b.sun, a.carrier=b.carrier",
            clutches: "brake: a.ring case");
        Assert.Equal(-4.1, -100 / Gears.Ratio(held, "brake"), 5e-2);
        Assert.Equal(-4.14747, -100 / Gears.Ratio(held, "brake"), 1e-5);
    }

    [Fact]
    public void Three_coupled_sets_give_500_and_550_from_1500()
    {
        // Khurmi, example 13.23, p. 469: teeth 144, 120, 120 outside and 36, 24, 30 inside, 1500 rpm in; shaft O 500,
        // shaft P 550 rpm. The teeth and both answers stand in the source; which members are coupled was worked out
        // again from them, as the one arrangement that gives both.
        var train = Gears.Train(
            "one 36/144, two 24/120, three 30/120", input: "one.sun", output: "two.carrier",
            joined: "one.sun=two.sun, one.carrier=two.ring, one.carrier=three.sun, two.carrier=three.carrier",
            clutches: "brake: one.ring case");
        var motion = train.Solve(["brake"]);
        Assert.Equal(500, 1500 / motion.Ratio!.Value, 1e-12);
        Assert.Equal(550, 1500 * Gears.Speed(motion, "three.ring"), 1e-12);
    }
}
