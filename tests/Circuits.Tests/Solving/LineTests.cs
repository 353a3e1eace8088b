using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Line pressure: the spring and its boosts, who holds it, and where the surplus goes.</summary>
public sealed class LineTests
{
    private const string Pumped = "pump: {into: body.line, relief: 1500 kPa}";

    [Theory]
    [InlineData("R", 1000)] // p = 500 + 0.5 p
    [InlineData("N", 500)]
    public void Reverse_oil_that_boosts_line_raises_it_by_its_own_rise_as_well(string gear, double expected)
    {
        var unit = CircuitCase.Of($$$"""
            {{{Pumped}}}
            parts:
              body:
                kind: casting
                passages: {line: {}, reverse: {}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa, boost: {pressure: reverse, ratio: 0.5}} }
                lever: {R: [[line, reverse]], N: [[reverse, exhaust]]}
            gears: {R: {lever: R, apply: []}, "N": {lever: "N", apply: []}}
            """);
        CircuitCase.Near(expected, unit.Gear(gear).LineKilopascals);
    }

    [Fact]
    public void A_boost_that_drains_counts_with_what_is_left_of_it()
    {
        // Feed and drain alike leave half: p = 500 + 0.5 p / 2.
        var unit = CircuitCase.Body("line reverse", """
            regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa, boost: {pressure: reverse, ratio: 0.5}}}
            restrictions: [{between: [line, reverse], hole: 2 mm}, {between: [reverse, exhaust], hole: 2 mm}]
            """, "", Pumped);
        CircuitCase.Near(500 / 0.75, unit.Pressure("line"));
        CircuitCase.Near(250 / 0.75, unit.Pressure("reverse"));
    }

    [Fact]
    public void A_limit_regulator_keeps_a_boost_from_raising_itself_without_bound()
    {
        // Line feeds the signal that boosts it, 1.6 times; the limit holds the feed at 400: 450 + 1.6 x 400.
        var unit = CircuitCase.Body("line feed", """
            regulators:
              main: {holds: line, spills-to: exhaust, spring: 450 kPa, boost: {pressure: feed, ratio: 1.6}}
              limit: {from: line, out: feed, spring: 400 kPa}
            """, "", Pumped);
        CircuitCase.Near(400, unit.Pressure("feed"));
        CircuitCase.Near(1090, unit.Pressure("line"));
    }

    [Fact]
    public void Of_two_line_regulators_the_lower_governs()
    {
        var unit = CircuitCase.Body("line", """
            regulators: {main: {holds: line, spills-to: exhaust, spring: 700 kPa}, relief: {holds: line, spills-to: exhaust, spring: 600 kPa}}
            """, "", Pumped);
        CircuitCase.Near(600, unit.Pressure("line"));
    }

    [Fact]
    public void The_surplus_feeds_the_first_outlet_that_is_not_the_sump()
    {
        // 30 mm2 when no port is given, against a drain of 60 mm2: 500 / (1 + 2^2).
        var unit = CircuitCase.Body("line converter", """
            regulators: {main: {holds: line, spills-to: [exhaust, converter], spring: 500 kPa}}
            restrictions: [{between: [converter, exhaust], area: 60 mm2}]
            """, "", Pumped);
        CircuitCase.Near(500, unit.Pressure("line"));
        CircuitCase.Near(100, unit.Pressure("converter"));
        Assert.Contains("assumed 30 mm2 for the port of body.main: no area given", unit.Report().Assumptions.Select(assumption => assumption.Words()));
    }

    [Fact]
    public void The_passage_that_the_regulator_holds_has_the_set_pressure_wherever_the_pump_is()
    {
        // The converter takes flow through the plate's hole; the spool feels what is on its own side.
        var unit = CircuitCase.Of("""
            joints: {face: {between: [housing, body], sheets: [plate]}}
            pump: {into: housing.line}
            parts:
              housing: {kind: casting, passages: {line: {face: 1}}}
              plate: {kind: sheet, openings: [{at: 1, hole: 3 mm}]}
              body:
                kind: casting
                passages: {line: {face: 1}, converter: {}}
                regulators: {main: {holds: line, spills-to: converter, spring: 500 kPa}}
                restrictions: [{between: [converter, exhaust], hole: 8 mm}]
            gears: {G: {apply: []}}
            """);
        CircuitCase.Near(500, unit.Pressure("body.line"));
        Assert.True(unit.Pressure("housing.line") >= 500 - 1e-3);
    }

    [Theory]
    [InlineData("pump: {into: body.line, relief: 1500 kPa}", 1500)]
    [InlineData("pump: {into: body.line}", 2000)]
    public void Without_a_regulator_line_has_what_the_pump_can_make_and_that_is_found(string pump, double expected)
    {
        var unit = CircuitCase.Body("line", "marks: []", "", pump);
        CircuitCase.Near(expected, unit.Pressure("line"));
        Assert.Contains("unregulated-line", unit.Rules());
    }

    [Fact]
    public void A_line_regulator_that_the_pumps_oil_reaches_only_past_a_valve_is_a_relief_of_its_own_passage()
    {
        // 5 mm2 bring 5 x root 700; the relief's 30 mm2 let more than that out at 500.
        var unit = CircuitCase.Of("""
            pump: {into: body.outer, relief: 1200 kPa}
            parts:
              body:
                kind: casting
                passages: {outer: {circuit: line}, line: {}, low: {}}
                regulators: {main: {holds: line, spills-to: [low, exhaust], spring: 500 kPa}}
                lever: {D: [{join: [outer, line], area: 5 mm2}, [low, exhaust]], N: [[low, exhaust]]}
            gears: {D: {lever: D, apply: []}, "N": {lever: "N", apply: []}}
            """);
        CircuitCase.Near(1200, unit.Pressure("outer", "D"));
        CircuitCase.Near(500, unit.Pressure("line", "D"));
        CircuitCase.Near(0, unit.Pressure("line", "N"));
        CircuitCase.Near(0, unit.Pressure("low", "N"));
        Assert.Contains("unregulated-line", unit.Rules());
    }
}
