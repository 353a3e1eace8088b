using Circuits.Laws;
using CsCheck;
using Xunit;
using static Circuits.Tests.Laws.FlowLaw;

namespace Circuits.Tests.Laws;

public class OpeningLawTests
{
    [Fact]
    public void A_ball_opens_steadily_up_to_its_hole() =>
        ForAll(Gen.Select(Gen.Double[1e-3, 6], Gen.Double[3, 10], Gen.Double[0.3, 0.95]), x =>
        {
            var (lift, ball, seat) = (x.Item1, x.Item2, x.Item2 * x.Item3);
            var (here, above, hole) = (BallSeat.Open(lift, ball, seat), BallSeat.Open(lift * 1.01, ball, seat), Math.PI / 4 * seat * seat);
            if (here <= 0 || here > hole) return $"area: {here} of {hole}";
            return above > here || above == hole ? null : $"area: falls from {here} to {above}";
        });

    [Fact]
    public void A_port_opens_steadily_up_to_its_length() =>
        ForAll(Gen.Select(Gen.Double[-3e-3, 6e-3], Gen.Double[-1e-3, 1e-3], Gen.Double[1e-3, 4e-3]), x =>
            Opening(travel => SpoolPort.Open(travel, x.Item2, 0.03, x.Item3), x.Item1, 0.03 * x.Item3));

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-3)]
    public void A_seat_that_is_not_lifted_is_shut(double lift) => Assert.Equal(0, BallSeat.Open(lift, 6, 4));

    [Fact]
    public void Overlap_shuts_and_underlap_opens_a_port_at_rest()
    {
        Assert.True(SpoolPort.Open(0, 0.5e-3, 0.03, 2e-3).Area < 0.03 * 1e-7);
        Assert.Equal(0.03 * 0.5e-3, SpoolPort.Open(0, -0.5e-3, 0.03, 2e-3).Area, 0.03 * 1e-7);
        // At the very edge half of the clearance is open.
        Assert.Equal(0.03 * SpoolPort.Clearance / 2, SpoolPort.Open(0, 0, 0.03, 2e-3).Area, 0.03 * 1e-7);
    }

    [Fact]
    public void A_reducing_regulator_feeds_below_its_pressure_and_drains_above() =>
        ForAll(Gen.Select(Gen.Double[1e5, 8e5], Gen.Double[15, 55], Gen.Double[0, 8e5]), x =>
        {
            var spool = new RegulatorSizes(80e-6, 3e3, 0.03, 1e-3, 0.05e-3);
            var (pressure, force, difference) = x;
            var set = RegulatorLaw.SetPressure(spool, force);
            var (feed, drain) = (RegulatorLaw.Feed(spool, pressure, force, difference), RegulatorLaw.Spill(spool, pressure, force, difference));
            if ((pressure < set) != (feed.Area > drain.Area)) return $"ports: feed {feed}, drain {drain}, set {set}";
            if (feed.ByPressure > 0 || drain.ByPressure < 0) return $"slopes: feed {feed}, drain {drain}";
            return Slopes(spool, pressure, force, difference) ?? Balance(spool, pressure, force, difference);
        });

    /// <summary>Both slopes are those of central differences.</summary>
    private static string? Slopes(in RegulatorSizes spool, double pressure, double force, double difference)
    {
        var feed = RegulatorLaw.Feed(spool, pressure, force, difference);
        var byPressure = (RegulatorLaw.Feed(spool, pressure + 1, force, difference).Area - RegulatorLaw.Feed(spool, pressure - 1, force, difference).Area) / 2;
        if (Math.Abs(byPressure - feed.ByPressure) > (1e-5 * Math.Abs(feed.ByPressure)) + 1e-17) return $"by pressure: {feed.ByPressure}, by differences {byPressure}";
        if (difference < 1) return null;
        var across = (RegulatorLaw.Feed(spool, pressure, force, difference + 1).Area - RegulatorLaw.Feed(spool, pressure, force, difference - 1).Area) / 2;
        return Math.Abs(across - feed.ByDifference) <= (1e-4 * Math.Abs(feed.ByDifference)) + 1e-17 ? null : $"by difference: {feed.ByDifference}, by differences {across}";
    }

    /// <summary>Where a port is partly open, the forces on the spool cancel: pressure on the land, spring at its travel, and the jet through what is open.</summary>
    private static string? Balance(in RegulatorSizes spool, double pressure, double force, double difference)
    {
        var open = RegulatorLaw.Feed(spool, pressure, force, difference).Area / spool.Width;
        if (open < 0.05e-3 || open > 0.9e-3) return null;
        var left = force - (pressure * spool.Area) - (spool.Rate * (spool.Overlap + open)) - FlowForce.Steady(open * spool.Width, difference);
        return Math.Abs(left) < 0.01 ? null : $"forces: {left} N are left over at an opening of {open} m";
    }

    [Fact]
    public void Boost_raises_what_a_spilling_regulator_holds_by_its_force_over_its_land()
    {
        var spool = new RegulatorSizes(100e-6, 3e3, 0.03, 1e-3, 0);
        Assert.Equal(4e5, RegulatorLaw.SetPressure(spool, 40), 1e-6);
        Assert.Equal(4e5 + (0.5 * 3e5), RegulatorLaw.SetPressure(spool, 40 + (3e5 * 50e-6)), 1e-6);
        Assert.True(RegulatorLaw.Spill(spool, 5e5, 40, 0).Area > RegulatorLaw.Spill(spool, 5e5, 40 + (3e5 * 50e-6), 0).Area);
    }

    [Fact]
    public void Outlets_of_a_spilling_regulator_open_one_after_the_other()
    {
        // The first is fully open after 1 mm of 3 N/mm on 100 mm2, 30 kPa, and the second begins there.
        var spool = new RegulatorSizes(100e-6, 3e3, 0.03, 1e-3, 0);
        Assert.Equal(0.5, RegulatorLaw.Spill(spool, 4.15e5, 40, 0).Area / 30e-6, 1e-3);
        Assert.InRange(RegulatorLaw.Spill(spool, 4.15e5, 40, 0, 1).Area / 30e-6, 0, 1e-3);
        Assert.Equal(1, RegulatorLaw.Spill(spool, 4.45e5, 40, 0).Area / 30e-6, 1e-3);
        Assert.Equal(0.5, RegulatorLaw.Spill(spool, 4.45e5, 40, 0, 1).Area / 30e-6, 1e-3);
    }

    /// <summary>Between shut and <paramref name="most"/>; rising; its slope that of central differences, except at its one corner.</summary>
    private static string? Opening(Func<double, OpenArea> law, double lift, double most)
    {
        const double Step = 1e-9;
        var (below, here, above) = (law(lift - Step), law(lift), law(lift + Step));
        if (here.Area < 0 || here.Area > most * (1 + 1e-12)) return $"area: {here.Area} of {most}";
        if (above.Area < here.Area - (1e-13 * most)) return $"area: falls from {here.Area} to {above.Area}";
        if (below.Slope == 0 != (above.Slope == 0)) return null;
        var numeric = (above.Area - below.Area) / (2 * Step);
        return Math.Abs(numeric - here.Slope) <= (1e-4 * here.Slope) + (1e-6 * most / Step * 1e-6) ? null : $"slope: {here.Slope}, by differences {numeric}";
    }
}
