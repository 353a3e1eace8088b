using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Regulators that their own outlet sets: below a ratio of 1 there is a pressure that they hold, from 1 on there is none.</summary>
public sealed class SelfRaisingTests
{
    // p = ratio x p + 20: 20 / (1 - ratio). From a ratio of 1 on the set pressure runs ahead of the outlet, and the port stands open: 900 / (1 + (3 / 30)^2).
    [Theory]
    [InlineData(0.5, 40)]
    [InlineData(0.9, 200)]
    [InlineData(1, 900 / 1.01)]
    [InlineData(1.2, 900 / 1.01)]
    [InlineData(3, 900 / 1.01)]
    public void A_regulator_that_its_outlet_sets(double ratio, double kilopascals)
    {
        var unit = CircuitCase.Body("feed out", $$$"""
            regulators: {limit: {from: feed, out: out, set-by: {pressure: out, ratio: {{{ratio}}}}, spring: 20 kPa, port: 30 mm2}}
            restrictions: [{between: [out, exhaust], area: 3 mm2}]
            """, "signals: {body.feed: 900 kPa}");
        Assert.True(unit.Gear().Settled);
        CircuitCase.Near(kilopascals, unit.Pressure("out"));
    }

    // The valve joins the signal passage to the outlet only once the feed moves it, when the regulator already holds.
    [Theory]
    [InlineData(0.5, 40)]
    [InlineData(1, 900 / 1.01)]
    [InlineData(1.2, 900 / 1.01)]
    public void A_valve_that_joins_the_signal_to_the_outlet(double ratio, double kilopascals)
    {
        var unit = CircuitCase.Body("feed out signal", $$$"""
            regulators: {limit: {from: feed, out: out, set-by: {pressure: signal, ratio: {{{ratio}}}}, spring: 20 kPa, port: 30 mm2}}
            restrictions: [{between: [out, exhaust], area: 3 mm2}]
            valves: {select: {rest: [], moved: [[out, signal]], moved-by: [{pressure: out, area: 100 mm2}], held-by: [{spring: 1 N}]}}
            """, "signals: {body.feed: 900 kPa}");
        Assert.True(unit.Gear().Settled);
        CircuitCase.Near(kilopascals, unit.Pressure("out"));
    }

    // Two signals add up: 0.6 and 0.4 of its own outlet are as much as it rises; 0.6 and 0.3 are not: 20 / (1 - 0.9).
    [Theory]
    [InlineData(0.4, 900 / 1.01)]
    [InlineData(0.3, 200)]
    public void Signals_from_the_outlet_add_up(double second, double kilopascals)
    {
        var unit = CircuitCase.Body("feed out", $$$"""
            regulators: {limit: {from: feed, out: out, set-by: [{pressure: out, ratio: 0.6}, {pressure: out, ratio: {{{second}}}}], spring: 20 kPa, port: 30 mm2}}
            restrictions: [{between: [out, exhaust], area: 3 mm2}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(kilopascals, unit.Pressure("out"));
    }
}
