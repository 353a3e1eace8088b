using Circuits.Driveline;
using Xunit;

namespace Circuits.Tests.Driveline;

public class ClosedForms
{
    private const double Sun = 34, Ring = 74;

    [Theory]
    [InlineData("sun", "carrier", "ring", (Sun + Ring) / Sun)]
    [InlineData("ring", "carrier", "sun", (Sun + Ring) / Ring)]
    [InlineData("carrier", "sun", "ring", Sun / (Sun + Ring))]
    [InlineData("carrier", "ring", "sun", Ring / (Sun + Ring))]
    [InlineData("sun", "ring", "carrier", -Ring / Sun)]
    [InlineData("ring", "sun", "carrier", -Sun / Ring)]
    public void Six_ways_to_use_one_set_with_single_pinions(string input, string output, string held, double ratio) =>
        Assert.Equal(ratio, Gears.Ratio(One("", input, output, held), "brake"), 1e-15);

    [Theory]
    [InlineData("sun", "carrier", "ring", (Sun - Ring) / Sun)]
    [InlineData("ring", "carrier", "sun", (Ring - Sun) / Ring)]
    [InlineData("carrier", "sun", "ring", Sun / (Sun - Ring))]
    [InlineData("carrier", "ring", "sun", Ring / (Ring - Sun))]
    [InlineData("sun", "ring", "carrier", Ring / Sun)]
    [InlineData("ring", "sun", "carrier", Sun / Ring)]
    public void Six_ways_to_use_one_set_with_double_pinions(string input, string output, string held, double ratio) =>
        Assert.Equal(ratio, Gears.Ratio(One(" double", input, output, held), "brake"), 1e-15);

    [Fact]
    public void Double_pinions_give_reverse_by_holding_the_ring()
    {
        var motion = One(" double", "sun", "carrier", "ring").Solve(["brake"]);
        Assert.Equal(MotionKind.Drives, motion.Kind);
        Assert.True(motion.Ratio < 0);
        Assert.True(motion.EngineBraking);
    }

    [Fact]
    public void Two_suns_in_one_carrier_and_ring()
    {
        // The small sun meshes through double pinions, the large one through single pinions.
        const double small = 28, large = 35, ring = 85;
        var train = Gears.Train(
            "small 28/85 double, large 35/85", output: "large.ring",
            joined: "small.carrier=large.carrier, small.ring=large.ring",
            clutches: "forward: input small.sun, high: input large.carrier, back: input large.sun, band: large.sun case, low: large.carrier case");
        Assert.Equal(ring / small, Gears.Ratio(train, "forward", "low"), 1e-14);
        Assert.Equal(ring / small * (small + large) / (ring + large), Gears.Ratio(train, "forward", "band"), 1e-14);
        Assert.Equal(1, Gears.Ratio(train, "forward", "high"));
        Assert.Equal(ring / (ring + large), Gears.Ratio(train, "high", "band"), 1e-14);
        Assert.Equal(-ring / large, Gears.Ratio(train, "back", "low"), 1e-14);
    }

    [Fact]
    public void Torques_of_one_set_follow_its_teeth()
    {
        // Sun torque 1: ring a, carrier -(1 + a), with a = ring teeth over sun teeth.
        var reaction = Assert.Single(One("", "sun", "carrier", "ring").Reactions(["brake"]));
        Assert.Equal(("brake", "set.ring", "case"), (reaction.Name, reaction.First, reaction.Second));
        Assert.Equal(Ring / Sun, reaction.Share, 1e-15);
        Assert.Equal(-(1 + Ring / Sun), Assert.Single(One("", "sun", "ring", "carrier").Reactions(["brake"])).Share, 1e-15);
    }

    [Fact]
    public void An_input_clutch_carries_the_input_torque_and_the_brake_the_rest()
    {
        var train = Gears.Train(
            "set 34/74", output: "set.carrier", clutches: "forward: input set.sun, brake: set.ring case");
        var shares = train.TorqueShares(["brake", "forward"]);
        Assert.Equal(["forward", "brake"], shares.Select(share => share.Key));
        Assert.Equal([1, Ring / Sun], shares.Select(share => share.Value), Near);
    }

    [Fact]
    public void Two_clutches_side_by_side_carry_half_each()
    {
        var train = Gears.Train(
            "set 34/74", input: "set.sun", output: "set.carrier", clutches: "one: set.ring case, two: case set.ring");
        Assert.Equal([Ring / Sun / 2, Ring / Sun / 2], train.TorqueShares(["one", "two"]).Select(share => share.Value), Near);
        Assert.Equal([Ring / Sun / 2, -Ring / Sun / 2], train.Reactions(["one", "two"]).Select(reaction => reaction.Share), Near);
        Assert.Equal(Ring / Sun, Assert.Single(train.TorqueShares(["one"])).Value, 1e-15);
    }

    [Fact]
    public void A_clutch_that_holds_an_idle_member_carries_nothing()
    {
        var train = Gears.Train(
            "set 34/74, idle 30/70", input: "set.sun", output: "set.carrier", joined: "idle.carrier=set.carrier",
            clutches: "brake: set.ring case, other: idle.ring case");
        Assert.Equal(0, train.TorqueShares(["brake", "other"])[1].Value);
        Assert.Equal((34 + 74) / Sun, Gears.Ratio(train, "brake", "other"), 1e-15);
    }

    [Fact]
    public void A_locked_set_turns_as_one()
    {
        var train = Gears.Train(
            "set 34/74", output: "set.carrier", clutches: "a: input set.sun, b: input set.ring, c: input set.carrier");
        foreach (var pair in new[] { ("a", "b"), ("b", "c"), ("a", "c") })
        {
            var motion = train.Solve([pair.Item1, pair.Item2]);
            Assert.Equal(1, motion.Ratio);
            Assert.All(motion.Speeds, speed => Assert.Equal(1, speed.Value));
            Assert.Equal(["set.sun", "set.carrier", "set.ring", "input", "output"], motion.Speeds.Select(speed => speed.Key));
        }
    }

    [Fact]
    public void Clutches_of_no_member_are_ignored()
    {
        var train = One("", "sun", "carrier", "ring");
        Assert.Equal(train.Solve(["brake"]).Ratio, train.Solve(["converter", "brake"]).Ratio);
        Assert.Single(train.TorqueShares(["converter", "brake"]));
    }

    [Fact]
    public void Teeth_beyond_reason_still_give_the_exact_ratio_and_shares()
    {
        // Behind the brake hangs a chain that halves the speed 23 times, near enough, with a second brake at its end.
        // Squares of its ratio have more digits above and below the line than a double has range.
        const int sun = int.MaxValue - 2, ring = int.MaxValue - 1, count = 23;
        var sets = Enumerable.Range(1, count).ToArray();
        var train = Gears.Train(
            "s0 34/74, " + string.Join(", ", sets.Select(i => $"s{i} {sun}/{ring}")),
            input: "s0.sun", output: "s0.carrier",
            joined: "s0.ring=s1.sun, " + string.Join(", ", sets.Select(i => $"s{i}.ring=case"))
                + ", " + string.Join(", ", sets.Skip(1).Select(i => $"s{i - 1}.carrier=s{i}.sun")),
            clutches: $"brake: s0.ring case, far: s{count}.carrier case");
        var reduction = Math.Pow(sun / ((double)sun + ring), count);
        Assert.Equal((Sun + Ring) / Sun, Gears.Ratio(train, "far"), 1e-14);
        Assert.Equal(Ring / Sun / reduction, Assert.Single(train.TorqueShares(["far"])).Value, 1e-13 / reduction);
        var shares = train.TorqueShares(["brake", "far"]);
        Assert.Equal(Ring / Sun / (1 + reduction * reduction), shares[0].Value, 1e-14);
        Assert.Equal(Ring / Sun * reduction, shares[1].Value, 1e-12 * reduction);
    }

    private static bool Near(double expected, double actual) => Math.Abs(expected - actual) < 1e-14;

    private static GearTrain One(string pinions, string input, string output, string held) => Gears.Train(
        $"set 34/74{pinions}", input: $"set.{input}", output: $"set.{output}", clutches: $"brake: set.{held} case");
}
