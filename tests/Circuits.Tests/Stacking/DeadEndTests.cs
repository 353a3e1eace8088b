using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Stacking;

/// <summary>Openings and seats that lead nowhere.</summary>
public sealed class DeadEndTests
{
    private const string TwoCastings = """
        joints: {face: {between: [body, cover], sheets: [gasket, plate]}}
        pump: {into: body.line, relief: 800 kPa}
        clutches: {low: {at: cover.low}}
        parts:
          body:
            kind: casting
            passages: {line: {face: [2, 3]}, drain: {face: [4]}}
            balls: {check: {in: line, seats: [2, 3], diameter: 6 mm}}
          gasket: {kind: sheet, open-except: []}
          plate: {kind: sheet, openings: [{at: 2, hole: 4 mm}, {at: 3, hole: 4 mm}, {at: [4, 5], slot: 2 x 9 mm}]}
          cover: {kind: casting, passages: {low: {face: [3]}, out: {face: [5]}}}
        gears: {G: {apply: [low]}}
        """;

    [Fact]
    public void A_ball_over_a_hole_that_meets_solid_metal_has_nothing_to_close_there()
    {
        // Location 2 is solid in the cover: of the two seats only 3 is left, and the ball is a check ball.
        var unit = CircuitCase.Of(TwoCastings);
        Assert.Equal("closes plate@3", unit.Position("body.check"));
        CircuitCase.Near(0, unit.Pressure("cover.low"));
    }

    [Fact]
    public void An_opening_that_joins_two_passages_is_one_link_of_its_own_area_whatever_else_ends_at_it()
    {
        // The gasket's opening at 5 touches the slot from above and leads nowhere.
        var network = Circuits.Networks.NetworkBuilder.Build(CircuitCase.Of(TwoCastings).Assembly());
        var slot = Assert.Single(network.Links, link => link.Element == "plate@4-5");
        Assert.Equal(18, slot.SquareMillimetres, 9);
    }
}
