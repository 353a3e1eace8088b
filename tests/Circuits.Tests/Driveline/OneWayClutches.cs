using Circuits.Driveline;
using Xunit;

namespace Circuits.Tests.Driveline;

public class OneWayClutches
{
    // Sun in, carrier out; the ring wants to turn backwards.
    private static GearTrain Reduction(string oneWay) => Gears.Train(
        "set 30/70", input: "set.sun", output: "set.carrier",
        clutches: "brake: set.ring case, direct: set.sun set.ring", oneWay: oneWay);

    [Fact]
    public void Holds_the_ring_that_would_turn_backwards()
    {
        var train = Reduction("sprag: set.ring case");
        var motion = train.Solve([]);
        Assert.Equal(MotionKind.Drives, motion.Kind);
        Assert.Equal(100.0 / 30, motion.Ratio!.Value, 1e-15);
        Assert.Equal(["sprag"], motion.HoldingOneWays);
        Assert.False(motion.EngineBraking);
        Assert.Equal(70.0 / 30, Assert.Single(train.Reactions([])).Share, 1e-15);
    }

    [Fact]
    public void Does_nothing_the_other_way_round()
    {
        var train = Reduction("sprag: case set.ring");
        Assert.Equal((MotionKind.NoDrive, 2), (train.Solve([]).Kind, train.Solve([]).Mobility));
    }

    [Fact]
    public void Overruns_when_a_clutch_makes_its_member_run_ahead()
    {
        var motion = Reduction("sprag: set.ring case").Solve(["direct"]);
        Assert.Equal(1, motion.Ratio);
        Assert.Empty(motion.HoldingOneWays);
        Assert.True(motion.EngineBraking);
        Assert.Equal(1, Gears.Speed(motion, "set.ring"));
    }

    [Fact]
    public void Ties_up_when_it_faces_a_member_that_a_clutch_drives_forwards()
    {
        // As overruns above, but it holds forwards: input and ring cannot turn forwards together.
        Assert.Equal(MotionKind.TieUp, Reduction("sprag: case set.ring").Solve(["direct"]).Kind);
    }

    [Fact]
    public void A_brake_beside_it_takes_the_torque_and_gives_engine_braking()
    {
        var train = Reduction("sprag: set.ring case");
        var motion = train.Solve(["brake"]);
        Assert.Empty(motion.HoldingOneWays);
        Assert.True(motion.EngineBraking);
        Assert.Equal(["brake"], train.TorqueShares(["brake"]).Select(share => share.Key));
    }

    [Fact]
    public void Reverse_holds_a_carrier_that_would_turn_forwards()
    {
        // Sun in, ring out: the carrier is dragged forwards, so that it is the case that must not fall behind it.
        var train = Gears.Train("set 30/70", input: "set.sun", output: "set.ring", oneWay: "sprag: case set.carrier");
        var motion = train.Solve([]);
        Assert.Equal(-70.0 / 30, motion.Ratio!.Value, 1e-15);
        Assert.Equal(["sprag"], motion.HoldingOneWays);
        Assert.False(motion.EngineBraking);
        var reaction = Assert.Single(train.Reactions([]));
        Assert.Equal("sprag", reaction.Name);
        Assert.Equal(1 + 70.0 / 30, reaction.Share, 1e-14);
    }

    [Fact]
    public void In_a_chain_of_two_both_carry_the_same()
    {
        // Input through one sprag to a loose shaft, through another to the sun. The driven side is named first: it
        // cannot fall behind.
        var train = Gears.Train(
            "set 30/70", output: "set.carrier", clutches: "brake: set.ring case, coast: input set.sun",
            oneWay: "first: loose input, second: set.sun loose");
        var motion = train.Solve(["brake"]);
        Assert.Equal(100.0 / 30, motion.Ratio!.Value, 1e-15);
        Assert.Equal(["first", "second"], motion.HoldingOneWays);
        Assert.False(motion.EngineBraking);
        Assert.Equal([70.0 / 30, 1, 1], train.TorqueShares(["brake"]).Select(share => share.Value), Near);
        Assert.True(train.Solve(["brake", "coast"]).EngineBraking);
    }

    [Fact]
    public void Overruns_when_a_brake_engages_a_faster_gear()
    {
        // Two reductions side by side; with the brake of the faster one, the sprag of the slower overruns.
        var train = Gears.Train(
            "low 30/70, mid 60/70", input: "low.sun", output: "low.carrier",
            joined: "low.sun=mid.sun, low.carrier=mid.carrier",
            clutches: "second: mid.ring case", oneWay: "first-sprag: low.ring case");
        Assert.Equal(100.0 / 30, Gears.Ratio(train), 1e-15);
        var second = train.Solve(["second"]);
        Assert.Equal(130.0 / 60, second.Ratio!.Value, 1e-15);
        Assert.Empty(second.HoldingOneWays);
        Assert.True(Gears.Speed(second, "low.ring") > 0);
    }

    [Fact]
    public void A_sprag_behind_a_brake_holds_only_while_the_brake_does()
    {
        var train = Gears.Train(
            "low 30/70, mid 60/70", input: "low.sun", output: "low.carrier",
            joined: "low.sun=mid.sun, low.carrier=mid.carrier",
            clutches: "second: drum case", oneWay: "first-sprag: low.ring case, second-sprag: mid.ring drum");
        var first = train.Solve([]);
        Assert.Equal(["first-sprag"], first.HoldingOneWays);
        Assert.DoesNotContain(first.Speeds, speed => speed.Key == "drum");
        var second = train.Solve(["second"]);
        Assert.Equal(130.0 / 60, second.Ratio!.Value, 1e-15);
        Assert.Equal(["second-sprag"], second.HoldingOneWays);
        Assert.False(second.EngineBraking);
        Assert.Equal(0, Gears.Speed(second, "drum"));
    }

    [Fact]
    public void A_pair_that_faces_both_ways_is_as_good_as_a_brake()
    {
        var motion = Reduction("a: set.ring case, b: case set.ring").Solve([]);
        Assert.Equal(100.0 / 30, motion.Ratio!.Value, 1e-15);
        Assert.Equal(["a"], motion.HoldingOneWays);
        Assert.True(motion.EngineBraking);
    }

    [Fact]
    public void An_output_that_only_cannot_roll_back_is_no_drive()
    {
        var train = Gears.Train(
            "set 30/70", output: "set.carrier", clutches: "forward: input set.sun, brake: set.ring case",
            oneWay: "hill: set.carrier case");
        Assert.Equal(MotionKind.NoDrive, train.Solve(["brake"]).Kind);
        Assert.Equal(MotionKind.NoDrive, train.Solve(["forward"]).Kind);
        Assert.Equal(MotionKind.Drives, train.Solve(["forward", "brake"]).Kind);
    }

    private static bool Near(double expected, double actual) => Math.Abs(expected - actual) < 1e-14;
}
