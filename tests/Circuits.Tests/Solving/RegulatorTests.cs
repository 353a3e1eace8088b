using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Reducing regulators and reliefs against closed forms. Flow is area times the root of the pressure difference.</summary>
public sealed class RegulatorTests
{
    [Theory]
    [InlineData(900, 380)] // 1.8 x 200 + 20
    [InlineData(250, 250)] // the supply gives less
    public void A_reducing_regulator_gives_ratio_times_signal_plus_spring_but_no_more_than_its_supply(double supply, double expected)
    {
        var unit = CircuitCase.Body(
            "feed out signal", "regulators: {direct: {from: feed, out: out, set-by: {pressure: signal, ratio: 1.8}, spring: 20 kPa}}",
            $"signals: {{body.feed: {supply} kPa, body.signal: 200 kPa}}");
        CircuitCase.Near(expected, unit.Pressure("out"));
    }

    [Fact]
    public void Signals_that_set_a_regulator_add_up()
    {
        var unit = CircuitCase.Body(
            "feed out up down",
            "regulators: {direct: {from: feed, out: out, set-by: [{pressure: up, ratio: 2}, {pressure: down, ratio: -0.5}], spring: 20 kPa}}",
            "signals: {body.feed: 900 kPa, body.up: 200 kPa, body.down: 100 kPa}");
        CircuitCase.Near(370, unit.Pressure("out"));
    }

    [Fact]
    public void A_regulator_that_is_set_to_nothing_opens_its_outlet_to_its_drain()
    {
        // What a 2 mm2 way brings from outside leaves by the port of 10 mm2: 900 x 2^2 / (2^2 + 10^2).
        var unit = CircuitCase.Body("feed out signal", """
            regulators: {direct: {from: feed, out: out, set-by: {pressure: signal}, port: 10 mm2}}
            restrictions: [{between: [feed, out], area: 2 mm2}]
            """, "signals: {body.feed: 900 kPa, body.signal: 0 kPa}");
        CircuitCase.Near(900 * 4 / 104.0, unit.Pressure("out"));
        Assert.Equal("drains", unit.Position("body.direct"));
    }

    [Fact]
    public void A_reducing_regulator_holds_its_outlet_at_the_set_pressure_while_it_gives_flow()
    {
        // A dead end hangs on the outlet; it must not disturb the flow that the regulator gives.
        var unit = CircuitCase.Body("feed out far end", """
            regulators: {limit: {from: feed, out: out, spring: 300 kPa}}
            restrictions: [{between: [out, far], hole: 2 mm}, {between: [far, exhaust], hole: 2 mm}, {between: [out, end], hole: 1 mm}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(300, unit.Pressure("out"));
        CircuitCase.Near(150, unit.Pressure("far"));
        CircuitCase.Near(300, unit.Pressure("end"));
        Assert.Equal("holds 300 kPa", unit.Position("body.limit"));
    }

    [Fact]
    public void A_regulator_whose_port_is_too_small_for_what_leaves_stands_open()
    {
        // 10 mm2 in, 20 mm2 out: 900 / (1 + 2^2) is below the set pressure.
        var unit = CircuitCase.Body("feed out", """
            regulators: {limit: {from: feed, out: out, spring: 300 kPa, port: 10 mm2}}
            leaks: [{between: [out, exhaust], area: 20 mm2}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(180, unit.Pressure("out"));
        Assert.Equal("open to its supply", unit.Position("body.limit"));
    }

    [Fact]
    public void What_a_regulator_gives_is_drawn_from_its_supply()
    {
        // It gives 5 x root 100 = 50, which takes (50 / 10)^2 = 25 kPa to come through 10 mm2.
        var unit = CircuitCase.Body("line feed out", """
            regulators: {limit: {from: feed, out: out, spring: 100 kPa}}
            restrictions: [{between: [line, feed], area: 10 mm2}, {between: [out, exhaust], area: 5 mm2}]
            """, "signals: {body.line: 900 kPa}");
        CircuitCase.Near(875, unit.Pressure("feed"));
        CircuitCase.Near(100, unit.Pressure("out"));
    }

    [Theory]
    [InlineData(30, 300, "holds 300 kPa")]
    [InlineData(1, 900 * 4 / 5.0, "drains")] // 2 mm2 in, 1 mm2 out
    public void Foreign_oil_above_the_set_pressure_is_let_out_even_without_supply(double port, double expected, string position)
    {
        var unit = CircuitCase.Body("feed out foreign", $$$"""
            regulators: {limit: {from: feed, out: out, spring: 300 kPa, port: {{{port}}} mm2}}
            restrictions: [{between: [foreign, out], area: 2 mm2}]
            """, "signals: {body.foreign: 900 kPa}");
        CircuitCase.Near(expected, unit.Pressure("out"));
        Assert.Equal(position, unit.Position("body.limit"));
    }

    [Fact]
    public void Oil_that_is_let_out_raises_the_passage_that_it_is_let_out_into()
    {
        // 2 mm in, 8 mm out of the drain passage: (2/8)^4 of the difference.
        var unit = CircuitCase.Body("feed out foreign drain", """
            regulators: {limit: {from: feed, out: out, to: drain, spring: 300 kPa}}
            restrictions: [{between: [foreign, out], hole: 2 mm}, {between: [drain, exhaust], hole: 8 mm}]
            """, "signals: {body.foreign: 900 kPa}");
        CircuitCase.Near(300, unit.Pressure("out"));
        CircuitCase.Near(600 / 256.0, unit.Pressure("drain"));
    }

    [Fact]
    public void Nothing_is_let_out_into_a_dead_end()
    {
        var unit = CircuitCase.Body("feed out foreign pocket", """
            regulators: {limit: {from: feed, out: out, to: pocket, spring: 300 kPa}}
            restrictions: [{between: [foreign, out], area: 2 mm2}]
            """, "signals: {body.foreign: 900 kPa}");
        CircuitCase.Near(900, unit.Pressure("out"));
        CircuitCase.Near(900, unit.Pressure("pocket"));
    }

    [Fact]
    public void A_drain_that_lies_open_to_the_outlet_itself_lets_nothing_out()
    {
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: []}}
            parts:
              body:
                kind: casting
                passages: {feed: {}, out: {face: 1}, drain: {face: 2}, foreign: {}}
                regulators: {limit: {from: feed, out: out, to: drain, spring: 300 kPa}}
                restrictions: [{between: [foreign, out], area: 2 mm2}]
              cover: {kind: casting, passages: {bridge: {face: [1, 2]}}}
            gears: {G: {signals: {body.foreign: 900 kPa}, apply: []}}
            """);
        CircuitCase.Near(900, unit.Pressure("out"));
        Assert.True(unit.Gear().Settled);
    }

    [Fact]
    public void A_regulator_cannot_feed_itself()
    {
        // Foreign oil fills both feeds at first, then is shut off from them: the second regulator's outlet leads back to its supply.
        var unit = CircuitCase.Body("line outer feed inner", """
            regulators:
              first: {from: feed, out: outer, spring: 290 kPa}
              second: {from: feed, out: inner, spring: 250 kPa}
            restrictions: [{between: [line, outer], hole: 4 mm}, {between: [feed, inner], hole: 3 mm}]
            """, "signals: {body.line: 1000 kPa}");
        CircuitCase.Near(290, unit.Pressure("outer"));
        CircuitCase.Near(0, unit.Pressure("feed"));
        CircuitCase.Near(0, unit.Pressure("inner"));
    }

    [Fact]
    public void A_regulator_that_its_own_outlet_raises_gives_all_that_it_has()
    {
        // At rest the signal passage is shut in; the valve then opens it to the outlet, 1.2 times which sets the regulator.
        var unit = CircuitCase.Body("feed out signal", """
            regulators: {limit: {from: feed, out: out, set-by: {pressure: signal, ratio: 1.2}, spring: 20 kPa}}
            valves: {select: {rest: [], moved: [[out, signal]], moved-by: [{pressure: feed, area: 100 mm2}], held-by: [{spring: 30 N}]}}
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(900, unit.Pressure("out"));
        Assert.True(unit.Gear().Settled);
    }

    [Fact]
    public void Of_two_regulators_on_one_passage_the_higher_holds_and_the_lower_drains()
    {
        var unit = CircuitCase.Body("feed out foreign", """
            regulators: {high: {from: feed, out: out, spring: 380 kPa}, low: {from: feed, out: out, spring: 250 kPa}}
            restrictions: [{between: [foreign, out], hole: 4 mm}]
            """, "signals: {body.feed: 700 kPa, body.foreign: 900 kPa}");
        CircuitCase.Near(380, unit.Pressure("out"));
        Assert.Equal("holds 380 kPa", unit.Position("body.high"));
        Assert.Equal("drains", unit.Position("body.low"));
    }

    [Theory]
    [InlineData(200, 30, 200, "closed")]
    [InlineData(900, 30, 300, "holds 300 kPa")]
    [InlineData(900, 2, 900 * 25 / 29.0, "drains")] // 5 mm2 in, 2 mm2 out: more comes than its port lets out
    public void A_relief_is_shut_below_its_set_pressure_holds_it_above_and_can_be_overrun(double supply, double port, double expected, string position)
    {
        var unit = CircuitCase.Body("feed held", $$$"""
            regulators: {relief: {holds: held, spills-to: exhaust, spring: 300 kPa, port: {{{port}}} mm2}}
            restrictions: [{between: [feed, held], area: 5 mm2}]
            """, $"signals: {{body.feed: {supply} kPa}}");
        CircuitCase.Near(expected, unit.Pressure("held"));
        Assert.Equal(position, unit.Position("body.relief"));
    }

    [Fact]
    public void A_relief_that_nothing_pushes_against_stays_shut()
    {
        // A regulator holds the other end of the restriction low, so the relief must not "hold" by giving oil it does not have.
        var unit = CircuitCase.Body("feed out held end", """
            regulators:
              limit: {from: feed, out: out, spring: 20 kPa}
              relief: {holds: held, spills-to: exhaust, spring: 290 kPa}
            restrictions: [{between: [out, held], hole: 0.75 mm}, {between: [out, end], hole: 2 mm}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(20, unit.Pressure("held"));
        Assert.Equal("closed", unit.Position("body.relief"));
    }
}
