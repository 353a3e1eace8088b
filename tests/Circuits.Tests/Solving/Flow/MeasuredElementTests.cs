using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>Elements of which a file gives more than an area, from the file to the flow, against their closed forms.</summary>
public sealed class MeasuredElementTests
{
    private const double Discharge = 0.611;

    // Hagen-Poiseuille: Q = pi d^4 dp / (128 mu L). Oil like honey: 0.1 m2/s, 850 kg/m3; 3 mm, 60 mm deep, from 10 bar to sump. The ends take nothing there.
    [Fact]
    public void A_deep_hole_in_thick_oil_is_a_tube()
    {
        var state = Restricted("{between: [source, exhaust], hole: 3 mm, length: 60 mm}", new FlowConditions(850, 0.1, default));
        var expected = Math.PI * Math.Pow(3e-3, 4) * 1e6 / (128 * 0.1 * 850 * 60e-3);
        Assert.Equal(expected, Assert.Single(state.Elements).Rate, 1e-3 * expected);
    }

    // Rabie, eq 2.40: at high Reynolds numbers 1.5 velocity heads are lost, Cd = 1 / sqrt(1.5), where a sharp hole has 0.611.
    [Fact]
    public void A_deep_hole_in_thin_oil_passes_more_than_a_sharp_one()
    {
        var state = Restricted(
            "{between: [source, a], hole: 2 mm, length: 6 mm}, {between: [a, exhaust], hole: 2 mm}", FlowCase.Thin, "source a");
        var share = 1 / 1.5 / ((1 / 1.5) + (Discharge * Discharge));
        Assert.Equal(1e6 * share, state.PressureAt(2), 20.0);
    }

    [Fact]
    public void A_hole_less_deep_than_half_its_width_is_sharp() => Assert.Equal(
        Restricted("{between: [source, exhaust], hole: 2 mm}", FlowCase.Thin).Elements[0].Rate,
        Restricted("{between: [source, exhaust], hole: 2 mm, length: 0.9 mm}", FlowCase.Thin).Elements[0].Rate);

    // Fox and McDonald, ex. 8.1, p. 317, read and worked out again: 25 mm, 5 um, 15 mm long, 20 to 1 MPa, 0.018 Pa s: 57.6 mm3/s (57.5716); touching, 2.5 times as much.
    [Theory]
    [InlineData("", 57.5716)]
    [InlineData(", eccentricity: 0.5", 79.1610)]
    [InlineData(", eccentricity: 1", 143.9291)]
    public void A_leak_along_a_spool(string offset, double expected)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source sink", $"leaks: [{{between: [source, sink], gap: 0.005 mm, around: 25 mm, length: 15 mm{offset}}}]",
            "signals: {body.source: 20 MPa, body.sink: 1 MPa}").Assembly());
        var state = flow.Solve(new FlowConditions(850, 0.018 / 850, default));
        Assert.Equal(expected, Assert.Single(state.Elements).Rate * 1e9, 1e-3);
    }

    // Q = w h^3 dp / (12 mu L) with 30 x 0.05 mm, 5 mm, 10 bar, 0.018 Pa s, less what a head and a half of velocity takes of the 10 bar: the root of a square.
    [Fact]
    public void A_leak_under_a_gasket()
    {
        var state = Restricted("{between: [source, exhaust], gap: 0.05 mm, width: 30 mm, length: 5 mm}", new FlowConditions(850, 0.018 / 850, default));
        const double Friction = 12 * 0.018 * 5e-3 / (30e-3 * 1.25e-13), Heads = 1.5 * 850 / 2 / (1.5e-6 * 1.5e-6);
        var expected = (Math.Sqrt((Friction * Friction) + (4 * Heads * 1e6)) - Friction) / (2 * Heads);
        Assert.Equal(expected, Assert.Single(state.Elements).Rate, 1e-9 * expected);
    }

    /// <summary>Where the static answer has no oil, a gap is the hole that passes the same at 500 kPa in hot oil: by the two laws of flow.</summary>
    [Fact]
    public void A_gap_stands_for_a_hole_in_the_static_answer()
    {
        var unit = CircuitCase.Body(
            "source", "leaks: [{between: [source, exhaust], gap: 0.03 mm, around: 12 mm, length: 8 mm, eccentricity: 1}]", "signals: {body.source: 500 kPa}");
        var link = Assert.Single(NetworkBuilder.Build(unit.Assembly()).Links, link => link.Kind == LinkKind.Leak);
        var leak = Leakage.WithInertia(Leakage.Annular(12e-3, 30e-6, 8e-3, 1, 5e5, 820 * 7e-6), Math.PI * 12e-3 * 30e-6, 5e5, 820).Flow;
        Assert.Equal(leak, SharpOrifice.Flow(link.SquareMillimetres * 1e-6, 5e5, 820, 1e-12).Flow, 1e-6 * leak);
        Assert.Contains(NetworkBuilder.Build(unit.Assembly()).Assumptions, assumption => assumption.Words().Contains("loses as much as a hole of", StringComparison.Ordinal));
    }

    // Own geometry (see the law): a 6.35 mm ball 0.5 mm off a 4 mm seat leaves 4.7703 mm2; 3 mm off, the whole hole.
    [Theory]
    [InlineData("0.5 mm", 4.7703)]
    [InlineData("3 mm", 12.5664)]
    public void A_ball_that_cannot_get_away_throttles_its_seat(string lift, double expected)
    {
        var unit = CircuitCase.Of(
            "joints: {face: {between: [body, cover], sheets: [plate]}}\nparts:\n  body:\n    kind: casting\n    passages: {pocket: {face: [1]}, inner: {}}\n"
            + $"    balls: {{a: {{in: pocket, seats: [1], diameter: 6.35 mm, lift: {lift}}}, b: {{in: inner, seats: [{{to: exhaust, hole: 4 mm}}], diameter: 6.35 mm, lift: {lift}}}}}\n"
            + "  cover: {kind: casting, passages: {out: {face: [1]}}}\n  plate: {kind: sheet, openings: [{at: 1, hole: 4 mm}]}\ngears:\n  G: {apply: []}\n");
        var seats = NetworkBuilder.Build(unit.Assembly()).Links.Where(link => link.Kind == LinkKind.Seat).ToList();
        Assert.Equal(2, seats.Count);
        Assert.All(seats, seat => Assert.Equal(expected, seat.SquareMillimetres, 1e-4));
    }

    // A spring of 40 N and 2 N/mm over 6 mm, moved by a pressure on 100 mm2: 3.5 mm at 470 kPa, 5 mm at 500 kPa. With an overlap of 1 mm the port of the moved
    // position opens from 4 to 6 mm; with an underlap of 1 mm both are open from 2 to 4 mm. 1000 kPa through it, then out by 40 mm2.
    [Theory]
    [InlineData("overlap", 470, 0, 0)]
    [InlineData("overlap", 500, 0.5, 0)]
    [InlineData("overlap", 430, 0, 0.25)]
    [InlineData("underlap", 460, 0.25, 0.25)]
    [InlineData("underlap", 480, 0.5, 0)]
    public void Laps_decide_what_a_spool_joins_on_its_way(string lap, double kilopascals, double moved, double rest)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "signal source a b",
            "valves: {v: {rest: [{join: [source, b], area: 40 mm2}], moved: [{join: [source, a], area: 40 mm2}], moved-by: [{pressure: signal, area: 100 mm2}], "
            + $"held-by: [{{spring: 40 N, rate: 2 N/mm}}], travel: 6 mm, {lap}: 1 mm}}}}\n"
            + "restrictions: [{between: [a, exhaust], area: 40 mm2}, {between: [b, exhaust], area: 40 mm2}]",
            $"signals: {{body.source: 1000 kPa, body.signal: {kilopascals} kPa}}").Assembly());
        var state = flow.Solve(FlowCase.Thin);
        Assert.True(state.Converged);
        Assert.Equal(1e6 * moved * moved / (1 + (moved * moved)), state.PressureAt(flow.Node("a")), 60.0);
        Assert.Equal(1e6 * rest * rest / (1 + (rest * rest)), state.PressureAt(flow.Node("b")), 60.0);
    }

    [Theory]
    [InlineData("overlap: 1 mm", 0)]
    [InlineData("underlap: 1 mm", 10)]
    public void A_spool_stuck_midway_follows_its_laps(string lap, double expected)
    {
        var unit = CircuitCase.Body(
            "source a", $"valves: {{v: {{rest: [[source, a]], moved: [], moved-by: [{{pressure: source}}], travel: 6 mm, {lap}}}}}", "signals: {body.source: 1000 kPa}");
        var stuck = unit.Unit with
        {
            Parts = [.. unit.Unit.Parts.Select(part => part with
            {
                Revisions = [.. part.Revisions.Select(revision => revision with { Valves = [revision.Valves[0] with { Stuck = StuckAt.Midway }] })],
            })],
        };
        var network = NetworkBuilder.Build(Assembly.DefaultOf(stuck));
        var ports = network.Links.Where(link => link.Kind == LinkKind.ValvePort);
        Assert.Equal(expected, ports.Sum(link => link.SquareMillimetres), 1e-9);
        Assert.DoesNotContain(network.Assumptions, assumption => assumption.Words().Contains("stuck midway", StringComparison.Ordinal));
    }

    /// <summary>
    /// A reducing regulator: 400 kPa, 80 mm2, 3 N/mm, 1 mm to 30 mm2, from 1000 kPa into a hole of 2 mm. Two equations, solved here by halving: the spool's
    /// forces with a jet of 2 Cd Cv A dp cos 69, and the same flow in as out.
    /// </summary>
    [Theory]
    [InlineData("", 0)]
    [InlineData(", overlap: 0.3 mm", 0.3e-3)]
    public void A_measured_regulator_droops_as_its_forces_say(string lap, double overlap)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source a", $"regulators: {{r: {{from: source, out: a, spring: 400 kPa, port: 30 mm2, land: 80 mm2, rate: 3 N/mm, travel: 1 mm{lap}}}}}\n"
            + "restrictions: [{between: [a, exhaust], hole: 2 mm}]",
            "signals: {body.source: 1000 kPa}").Assembly());
        var state = flow.Solve(FlowCase.Thin);
        Assert.True(state.Converged);
        var (low, high) = (0.0, 4e5);
        for (var i = 0; i < 60; i++)
        {
            var p = (low + high) / 2;
            var jet = 2 * Discharge * 0.98 * 0.03 * (1e6 - p) * Math.Cos(69 * Math.PI / 180);
            var open = (((4e5 - p) * 80e-6) - (3e3 * overlap)) / (3e3 + jet);
            var (fed, drained) = (0.03 * open * Math.Sqrt(1e6 - p), Math.PI * 1e-6 * Math.Sqrt(p));
            if (open > 0 && fed > drained) low = p;
            else high = p;
        }

        Assert.Equal(low, state.PressureAt(flow.Node("a")), 60.0);
        Assert.InRange(low, 2e5, 3.999e5);
    }

    /// <summary>A line regulator: 25 L/min through a port of 20 mm over its travel, which the jet of all of line pressure tends to shut.</summary>
    [Fact]
    public void A_measured_line_regulator_holds_more_the_more_it_spills()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "line", "regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa, port: 40 mm2, land: 100 mm2, rate: 5 N/mm, travel: 2 mm}}", "",
            "pump: {into: body.line}").Assembly());
        var state = flow.Solve(FlowCase.Thin with { Pump = new PumpCurve(25e-3 / 60, 2e6) });
        Assert.True(state.Converged);
        var p = state.PressureAt(flow.Network.Pump);
        var open = 25e-3 / 60 / (Discharge * Math.Sqrt(2 * p / 850)) / 0.02;
        var jet = 2 * Discharge * 0.98 * 0.02 * open * p * Math.Cos(69 * Math.PI / 180);
        Assert.Equal((5e5 * 100e-6) + (5e3 * open) + jet, p * 100e-6, 0.02);
        Assert.InRange(p, 5.2e5, 7e5);
        Assert.DoesNotContain(flow.Flow.Assumptions, assumption => assumption.Words().Contains("regulator opens", StringComparison.Ordinal));
    }

    /// <summary>16 mL/rev with 85 % at 2000 rpm and 700 kPa: 80 mL/s slip back there, at any speed; half as thick oil lets twice as much back.</summary>
    [Fact]
    public void What_slips_back_in_a_measured_pump_hangs_on_pressure_and_oil()
    {
        var unit = CircuitCase.Body(
            "line", "marks: [none]", "",
            "fluid: {grade: ISO VG 32, temperature: 90 degC}\n"
            + "pump: {into: body.line, displacement: 16 mL/rev, efficiency: 0.85, measured-at: {pressure: 700 kPa, speed: 2000 rpm}, relief: 2 MPa}").Unit;
        var (road, idle, cold) = (FlowConditions.Of(unit, 90, 2000, []), FlowConditions.Of(unit, 90, 600, []), FlowConditions.Of(unit, 40, 2000, []));
        Assert.Equal(16e-6 * 2000 / 60, road.Pump.At(0).Rate, 1e-12);
        Assert.Equal(0.85 * 16e-6 * 2000 / 60, road.Pump.At(7e5).Rate, 1e-12);
        Assert.Equal(160e-6 - 80e-6, idle.Pump.At(7e5).Rate, 1e-12);
        var slip = cold.Pump.At(0).Rate - cold.Pump.At(7e5).Rate;
        Assert.Equal(80e-6 * road.Density * road.Viscosity / (cold.Density * cold.Viscosity), slip, 1e-12);
        Assert.InRange(slip, 1e-6, 40e-6);
    }

    [Fact]
    public void A_pump_without_a_test_gives_the_same_at_every_pressure()
    {
        var unit = CircuitCase.Body("line", "marks: [none]", "", "pump: {into: body.line, displacement: 16 mL/rev, efficiency: 0.85}").Unit;
        var pump = FlowConditions.Of(unit, 90, 2000, []).Pump;
        Assert.Equal(pump.At(0).Rate, pump.At(7e5).Rate);
        Assert.Equal(0.85 * 16e-6 * 2000 / 60, pump.At(7e5).Rate, 1e-12);
    }

    private static SteadyGear Restricted(string restrictions, FlowConditions oil, string passages = "source")
    {
        var state = new FlowCase(CircuitCase.Body(passages, $"restrictions: [{restrictions}]", "signals: {body.source: 1000 kPa}").Assembly()).Solve(oil);
        Assert.True(state.Converged);
        return state;
    }
}
