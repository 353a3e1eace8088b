using Circuits.Driveline;
using Circuits.Tests.Driveline;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Two sets with one sun, the front carrier and the rear ring at the output. Teeth of the first pair from a published
/// exercise (transtutors.com, question 13691296, which prints no answer); the ratios follow from the formulas beside
/// them, worked out twice with other means (formula, and a 4 x 4 solve).
/// </summary>
public class PlanetarySimpson
{
    private static GearTrain Simpson(int frontSun, int frontRing, int rearSun, int rearRing) => Gears.Train(
        $"front {frontSun}/{frontRing}, rear {rearSun}/{rearRing}", output: "front.carrier",
        joined: "front.sun=rear.sun, front.carrier=rear.ring",
        clutches: "forward: input front.ring, direct: input front.sun, band: front.sun case, low: rear.carrier case",
        oneWay: "sprag: rear.carrier case");

    [Theory]
    [InlineData(28, 57, 37, 80, 2.553343, 1.491228, -2.162162)]
    [InlineData(28, 62, 28, 62, 2.451613, 1.451613, -2.214286)]
    public void Ratios(int frontSun, int frontRing, int rearSun, int rearRing, double first, double second, double reverse)
    {
        var train = Simpson(frontSun, frontRing, rearSun, rearRing);
        var (a1, a2) = ((double)frontRing / frontSun, (double)rearRing / rearSun);
        Assert.Equal(first, Gears.Ratio(train, "forward", "low"), 5e-7);
        Assert.Equal((1 + a1 + a2) / a1, Gears.Ratio(train, "forward", "low"), 1e-14);
        Assert.Equal(first, Gears.Ratio(train, "forward"), 5e-7);
        Assert.Equal(second, Gears.Ratio(train, "forward", "band"), 5e-7);
        Assert.Equal(1 + 1 / a1, Gears.Ratio(train, "forward", "band"), 1e-14);
        Assert.Equal(1, Gears.Ratio(train, "forward", "direct"));
        Assert.Equal(reverse, Gears.Ratio(train, "direct", "low"), 5e-7);
        Assert.Equal(-a2, Gears.Ratio(train, "direct", "low"), 1e-14);
    }

    [Fact]
    public void Mobility_is_shafts_less_equations_less_what_holds()
    {
        // Four shafts and two planetaries leave 2; a loose input adds 1; each clutch takes 1; a third element leaves 0.
        // Counting by linear algebra; no open textbook statement of the rule was found.
        var train = Simpson(28, 57, 37, 80);
        Assert.Equal((MotionKind.NoDrive, 3), Of(train.Solve([])));
        Assert.Equal((MotionKind.NoDrive, 2), Of(train.Solve(["direct"])));
        Assert.Equal((MotionKind.NoDrive, 2), Of(train.Solve(["band"])));
        Assert.Equal((MotionKind.Drives, 1), Of(train.Solve(["forward", "band"])));
        Assert.Equal((MotionKind.TieUp, 0), Of(train.Solve(["forward", "band", "low"])));
        Assert.Equal((MotionKind.TieUp, 0), Of(train.Solve(["forward", "direct", "low"])));
        Assert.Equal((MotionKind.TieUp, 0), Of(train.Solve(["forward", "direct", "band"])));
        static (MotionKind, int) Of(Motion motion) => (motion.Kind, motion.Mobility);
    }

    [Fact]
    public void The_sprag_holds_in_first_and_overruns_in_the_others()
    {
        var train = Simpson(28, 57, 37, 80);
        var first = train.Solve(["forward"]);
        Assert.Equal(["sprag"], first.HoldingOneWays);
        Assert.False(first.EngineBraking);
        Assert.Equal(0, Gears.Speed(first, "rear.carrier"));
        var lowRange = train.Solve(["forward", "low"]);
        Assert.Empty(lowRange.HoldingOneWays);
        Assert.True(lowRange.EngineBraking);
        foreach (var other in new[] { "band", "direct" })
        {
            var motion = train.Solve(["forward", other]);
            Assert.Empty(motion.HoldingOneWays);
            Assert.True(motion.EngineBraking);
            Assert.True(Gears.Speed(motion, "rear.carrier") > 0);
        }
    }
}
