using Circuits.Networks;
using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Ports at which more than two passages meet, and ports between passages that are one vessel.</summary>
public sealed class PortTests
{
    [Theory]
    [InlineData("feed, dead, sink")]
    [InlineData("sink, feed, dead")]
    [InlineData("dead, sink, feed")]
    public void Three_passages_meet_in_one_groove_in_whatever_order_they_are_named(string port)
    {
        // Any way through the port has its area. With a hole of the same area behind it, half the pressure drops in the port, and
        // half of that before the groove, in which the dead end feels 900 - 225 kPa.
        var unit = CircuitCase.Body("feed dead sink", $$"""
            lever: {D: [{join: [{{port}}], area: 40 mm2}]}
            restrictions: [{between: [sink, exhaust], area: 40 mm2}]
            """, "lever: D, signals: {body.feed: 900 kPa}");
        CircuitCase.Near(450, unit.Pressure("sink"));
        CircuitCase.Near(675, unit.Pressure("dead"));
    }

    [Fact]
    public void A_port_joins_what_is_there_when_a_revision_lacks_one_of_its_passages()
    {
        var unit = CircuitCase.Of("""
            parts:
              body:
                kind: casting
                revisions:
                  1: {passages: {gone: {}, feed: {}, out: {}}, lever: {D: [[gone, feed, out]]}}
                  2: {based-on: 1, passages: {gone: null}}
            gears: {G: {lever: D, signals: {body.feed: 500 kPa}, apply: []}}
            """);
        CircuitCase.Near(500, unit.Pressure("out", "G", "body=2"));
    }

    [Fact]
    public void A_shut_port_is_shut_also_between_passages_that_meet_elsewhere_without_restriction()
    {
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: []}}
            parts:
              body: {kind: casting, passages: {a: {face: 1}, b: {face: 2}}, lever: {D: [[a, b]], N: [[a, exhaust]]}}
              cover: {kind: casting, passages: {both: {face: [1, 2]}}}
            gears:
              D: {lever: D, apply: []}
              "N": {lever: "N", apply: []}
            """);
        var gears = SolvedAssembly.Of(unit.Assembly()).Gears;
        bool IsOpen(int gear) => gears[gear].Solution.IsOpen(
            gears[gear].Solution.Network.Links.Single(link => link.Kind == LinkKind.LeverPort && link.A != 0 && link.B != 0));
        Assert.True(IsOpen(0));
        Assert.False(IsOpen(1));
    }
}
