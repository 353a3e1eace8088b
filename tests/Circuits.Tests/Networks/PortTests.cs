using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Networks;

public sealed class PortTests
{
    [Theory]
    [InlineData("feed, out, side")]
    [InlineData("feed, side, out")]
    [InlineData("side, feed, out")]
    [InlineData("side, out, feed")]
    [InlineData("out, side, feed")]
    [InlineData("out, feed, side")]
    public void A_port_that_joins_three_passages_does_so_alike_in_whatever_order_they_are_named(string order)
    {
        // In by one and out by another is 10 mm2 once, against a drain of 10 mm2; what hangs on the middle has what is between.
        var unit = CircuitCase.Body("feed out side", $$$"""
            valves: {select: {rest: [{join: [{{{order}}}], area: 10 mm2}], moved: [], moved-by: []}}
            restrictions: [{between: [out, exhaust], area: 10 mm2}]
            """, "signals: {body.feed: 800 kPa}");
        CircuitCase.Near(400, unit.Pressure("out"));
        CircuitCase.Near(600, unit.Pressure("side"));
    }

    [Theory]
    [InlineData("a, b", "c, exhaust")]
    [InlineData("b, a", "exhaust, c")]
    public void Ports_apart_join_nothing_between_them(string first, string second)
    {
        var unit = CircuitCase.Body(
            "a b c", $"valves: {{select: {{rest: [[{first}], [{second}]], moved: [], moved-by: []}}}}", "signals: {body.a: 500 kPa}");
        CircuitCase.Near(500, unit.Pressure("b"));
        CircuitCase.Near(0, unit.Pressure("c"));
    }
}
