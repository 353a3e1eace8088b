using Circuits.Solving.Laws;
using CsCheck;
using Xunit;
using static Circuits.Tests.Solving.Laws.FlowLaw;

namespace Circuits.Tests.Solving.Laws;

public class OpeningLawTests
{
    [Fact]
    public void A_ball_opens_steadily_up_to_its_hole() =>
        ForAll(Gen.Select(Gen.Double[1e-6, 6e-3], Gen.Double[3e-3, 10e-3], Gen.Double[0.3, 0.95]), x =>
            Opening(lift => BallSeat.Open(lift, x.Item2, x.Item2 * x.Item3), x.Item1, Math.PI / 4 * Math.Pow(x.Item2 * x.Item3, 2)));

    [Fact]
    public void A_cone_opens_steadily_up_to_its_hole() =>
        ForAll(Gen.Select(Gen.Double[1e-6, 20e-3], Gen.Double[2e-3, 10e-3], Gen.Double[0.1, 1.4]), x =>
            Opening(lift => ConeSeat.Open(lift, x.Item2, x.Item3), x.Item1, Math.PI / 4 * x.Item2 * x.Item2));

    [Fact]
    public void A_port_opens_steadily_up_to_its_length() =>
        ForAll(Gen.Select(Gen.Double[-3e-3, 6e-3], Gen.Double[-1e-3, 1e-3], Gen.Double[1e-3, 4e-3]), x =>
            Opening(travel => SpoolPort.Open(travel, x.Item2, 0.03, x.Item3), x.Item1, 0.03 * x.Item3));

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-3)]
    public void A_seat_that_is_not_lifted_is_shut(double lift)
    {
        Assert.Equal(default, BallSeat.Open(lift, 6e-3, 4e-3));
        Assert.Equal(default, ConeSeat.Open(lift, 4e-3, 0.5));
    }

    [Fact]
    public void Overlap_shuts_and_underlap_opens_a_port_at_rest()
    {
        Assert.True(SpoolPort.Open(0, 0.5e-3, 0.03, 2e-3).Area < 0.03 * 1e-7);
        Assert.Equal(0.03 * 0.5e-3, SpoolPort.Open(0, -0.5e-3, 0.03, 2e-3).Area, 0.03 * 1e-7);
        // At the very edge half of the clearance is open.
        Assert.Equal(0.03 * SpoolPort.Clearance / 2, SpoolPort.Open(0, 0, 0.03, 2e-3).Area, 0.03 * 1e-7);
    }

    [Fact]
    public void A_piston_travels_steadily_between_its_stops() =>
        ForAll(Gen.Select(Gen.Double[-200, 800], Gen.Double[0, 100], Decades(1e3, 1e5)), x =>
        {
            var (preload, rate) = (x.Item2, x.Item3);
            var force = x.Item1;
            var (travel, slope) = SpringBalance.Travel(force, preload, rate, 5e-3);
            var step = 1e-4 * rate * 5e-3 * 1e-2;
            var numeric = (SpringBalance.Travel(force + step, preload, rate, 5e-3).Travel - SpringBalance.Travel(force - step, preload, rate, 5e-3).Travel) / (2 * step);
            if (travel is < 0 or > 5e-3) return $"travel: {travel}";
            if (Math.Abs(numeric - slope) > (1e-5 * slope) + (1e-7 / rate)) return $"slope: {slope}, by differences {numeric}";
            var plain = Math.Clamp((force - preload) / rate, 0, 5e-3);
            return Math.Abs(travel - plain) <= 5e-6 ? null : $"travel: {travel}, without rounding {plain}";
        });

    [Fact]
    public void A_reducing_regulator_feeds_below_its_pressure_and_drains_above() =>
        ForAll(Gen.Select(Gen.Double[1e5, 8e5], Gen.Double[0, 40]), x =>
        {
            var spool = new RegulatorSpool(80e-6, 15, 3e3, 0.03, 1e-3, 0.05e-3);
            var (pressure, signal) = x;
            var set = RegulatorLaw.SetPressure(spool, signal);
            var (feed, drain) = (RegulatorLaw.Feed(spool, pressure, signal), RegulatorLaw.Drain(spool, pressure, signal));
            if ((pressure < set) != (feed.Area > drain.Area)) return $"ports: feed {feed}, drain {drain}, set {set}";
            if (feed.Slope > 0 || drain.Slope < 0) return $"slopes: feed {feed}, drain {drain}";
            var numeric = (RegulatorLaw.Feed(spool, pressure + 1, signal).Area - RegulatorLaw.Feed(spool, pressure - 1, signal).Area) / 2;
            return Math.Abs(numeric - feed.Slope) <= 1e-5 * Math.Abs(feed.Slope) + 1e-17 ? null : $"slope: {feed.Slope}, by differences {numeric}";
        });

    [Fact]
    public void Boost_raises_what_a_spilling_regulator_holds_by_its_force_over_its_land()
    {
        var spool = new RegulatorSpool(100e-6, 40, 3e3, 0.03, 1e-3, 0);
        Assert.Equal(4e5, RegulatorLaw.SetPressure(spool, 0), 1e-6);
        Assert.Equal(4e5 + (0.5 * 3e5), RegulatorLaw.SetPressure(spool, 3e5 * 50e-6), 1e-6);
        Assert.True(RegulatorLaw.Spill(spool, 5e5, 0).Area > RegulatorLaw.Spill(spool, 5e5, 3e5 * 50e-6).Area);
    }

    [Fact]
    public void Gas_gives_way_by_its_slope() =>
        ForAll(Gen.Select(Decades(1e5, 1e7), Gen.Double[1, 1.4]), x =>
        {
            var (volume, slope) = GasCharge.At(x.Item1, 1e6, 1e-3, x.Item2);
            var step = x.Item1 * 1e-4;
            var numeric = (GasCharge.At(x.Item1 + step, 1e6, 1e-3, x.Item2).Volume - GasCharge.At(x.Item1 - step, 1e6, 1e-3, x.Item2).Volume) / (2 * step);
            return volume > 0 && Math.Abs((numeric / slope) - 1) < 1e-6 ? null : $"slope: {slope}, by differences {numeric}";
        });

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
