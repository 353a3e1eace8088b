using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>What oil that is shut in keeps, and what it sets.</summary>
public sealed class TrappedOilTests
{
    // ON fills the first chamber with 600 kPa and leaves the second empty; HOLD joins the two and shuts them in.
    private static CircuitCase Of(string chambers) => CircuitCase.Of($$$"""
        pump: {into: body.line}
        parts:
          body:
            kind: casting
            passages: {line: {}, first: {}, second: {}, supply: {}, out: {}}
            lever: {"ON": [[line, first], [second, exhaust]], HOLD: [[first, second], [line, supply]]}
            regulators:
              main: {holds: line, spills-to: exhaust, spring: 600 kPa}
              follower: {from: supply, out: out, set-by: {pressure: second, ratio: 0.5}, spring: 10 kPa}
        {{{chambers}}}
        gears: {"ON": {lever: "ON", apply: []}, HOLD: {lever: HOLD, apply: []}}
        """);

    // 600 x 30 / (30 + 10); a small chamber under pressure fills a large empty one little.
    [Theory]
    [InlineData(30, 10, 450)]
    [InlineData(10, 30, 150)]
    [InlineData(20, 20, 300)]
    public void Chambers_that_are_joined_and_shut_in_share_their_pressure_by_volume(double first, double second, double kilopascals)
    {
        var unit = Of($"clutches: {{one: {{at: body.first, fill: {first} mL}}, two: {{at: body.second, fill: {second} mL}}}}");
        CircuitCase.Near(kilopascals, Held(unit, "body.first"));
        CircuitCase.Near(kilopascals, Held(unit, "body.second"));

        // A regulator that it sets follows it: half of it and the spring.
        CircuitCase.Near((0.5 * kilopascals) + 10, Held(unit, "body.out"));
    }

    private static double Held(CircuitCase unit, string passage)
    {
        var solved = Circuits.Solving.SolvedAssembly.Of(unit.Assembly());
        var hold = solved.Gears.Single(gear => gear.Gear.Name == "HOLD");
        var solution = Assert.Single(hold.Others, other => other.From == "ON").Solution;
        return solution.PressureAt(solution.Network.Nodes.Single(node => node.Name == passage).Index);
    }
}
