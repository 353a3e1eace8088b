using Circuits.Judging;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Check balls and two-way balls: which seat they close, and what that keeps apart.</summary>
public sealed class BallTests
{
    private const string Shuttle = "balls: {two-way: {in: pocket, seats: [{to: one, hole: 4 mm}, {to: two, hole: 4 mm}], diameter: 6 mm}}";

    [Theory]
    [InlineData(500, 300, 500, "closes body:pocket~two")]
    [InlineData(300, 500, 500, "closes body:pocket~one")]
    [InlineData(500, 0, 500, "closes body:pocket~two")]
    public void A_two_way_ball_gives_the_higher_feed_and_closes_the_other(double one, double two, double pocket, string position)
    {
        var unit = CircuitCase.Body("pocket one two", Shuttle, $"signals: {{body.one: {one} kPa, body.two: {two} kPa}}");
        CircuitCase.Near(pocket, unit.Pressure("pocket"));
        Assert.Equal(position, unit.Position("body.two-way"));
    }

    [Fact]
    public void A_two_way_ball_keeps_an_open_branch_from_draining_the_feed()
    {
        var branches = """
            restrictions: [{between: [line, one], hole: 2 mm}, {between: [two, exhaust], hole: 4 mm}]
            """;
        var with = CircuitCase.Body("line pocket one two", $"{Shuttle}\n{branches}", "signals: {body.line: 800 kPa}");
        CircuitCase.Near(800, with.Pressure("pocket"));

        // Without the ball both seats are plain holes: 2 mm in, three of 4 mm in series out, each with 1/16 of its 1/A^2.
        var holes = branches.Trim().TrimEnd(']') + ", {between: [pocket, one], hole: 4 mm}, {between: [pocket, two], hole: 4 mm}]";
        var without = CircuitCase.Body("line pocket one two", holes, "signals: {body.line: 800 kPa}");
        CircuitCase.Near(800 * (3 / 16.0) / (1 + (3 / 16.0)), without.Pressure("one"));
        CircuitCase.Near(800 * (2 / 16.0) / (1 + (3 / 16.0)), without.Pressure("pocket"));
    }

    [Fact]
    public void A_pocket_that_drains_below_both_feeds_does_not_make_the_ball_hunt()
    {
        // 2 mm in, 4 mm out: 500 / (1 + 16).
        var unit = CircuitCase.Body("pocket one two", """
            balls: {two-way: {in: pocket, seats: [{to: one, hole: 2 mm}, {to: two, hole: 2 mm}]}}
            restrictions: [{between: [pocket, exhaust], hole: 4 mm}]
            """, "signals: {body.one: 500 kPa, body.two: 300 kPa}");
        Assert.True(unit.Gear().Settled);
        CircuitCase.Near(500 / 17.0, unit.Pressure("pocket"));
        Assert.Equal("closes body:pocket~two", unit.Position("body.two-way"));
    }

    /// <summary>
    /// Two level feeds through wide holes, and a small drain: whichever feed the ball leaves open falls behind the other by 500 (0.5 / 5)^4 = 0.05 kPa, and would be
    /// shut, and so on for ever. In flow a ball stands midway over 1 kPa; here it stays. With a drain that takes 12 kPa it hunts as it always did.
    /// </summary>
    [Theory]
    [InlineData("0.5 mm", true)]
    [InlineData("2 mm", false)]
    public void A_ball_between_feeds_that_are_level_within_a_kilopascal_has_settled(string drain, bool settles)
    {
        var unit = CircuitCase.Body("left right one two pocket", $$$"""
            balls: {two-way: {in: pocket, seats: [{to: one, hole: 5 mm}, {to: two, hole: 5 mm}]}}
            restrictions: [{between: [left, one], hole: 5 mm}, {between: [right, two], hole: 5 mm}, {between: [pocket, exhaust], hole: {{{drain}}} }]
            """, "signals: {body.left: 500 kPa, body.right: 500 kPa}");
        Assert.Equal(settles, unit.Gear().Settled);
        if (settles) Assert.InRange(unit.Pressure("pocket"), 499.8, 500);
    }

    [Theory]
    [InlineData(800, 0, "closes body:pocket~beyond")] // oil would leave the pocket by the seat
    [InlineData(0, 800, "open")]
    public void A_check_ball_closes_the_seat_its_pockets_oil_would_leave_by(double pocket, double beyond, string position)
    {
        var unit = CircuitCase.Body(
            "pocket beyond", "balls: {check: {in: pocket, seats: {to: beyond, hole: 4 mm}}}", $"signals: {{body.pocket: {pocket} kPa, body.beyond: {beyond} kPa}}");
        Assert.Equal(position, unit.Position("body.check"));
    }

    [Theory]
    [InlineData("line", "clutch", 800)] // from beyond the seat, past the ball
    [InlineData("clutch", "line", 0)]   // from the pocket, against it
    public void A_check_ball_lets_oil_come_and_none_go(string beyond, string pocket, double expected)
    {
        var unit = CircuitCase.Body(
            "line clutch", $"balls: {{check: {{in: {pocket}, seats: {{to: {beyond}, hole: 4 mm}}}}}}", "signals: {body.line: 800 kPa}");
        // The clutch is the pocket in the first case, beyond the seat in the second.
        CircuitCase.Near(expected, unit.Pressure("clutch"));
    }

    [Theory]
    [InlineData("feed", 1.5, 4.272)]  // ball in the feed: slow to apply, hole and seat together to release: root(1.5^2 + 4^2)
    [InlineData("clutch", 4.272, 1.5)] // ball in the clutch's own passage: the reverse
    public void A_hole_beside_a_check_ball_meters_one_way_only(string pocket, double apply, double release)
    {
        var beyond = pocket == "feed" ? "clutch" : "feed";
        var unit = CircuitCase.Of($$$"""
            pump: {into: body.line, relief: 800 kPa}
            clutches: {low: {at: body.clutch}}
            parts:
              body:
                kind: casting
                passages: {line: {}, feed: {}, clutch: {}}
                balls: {check: {in: {{{pocket}}}, seats: {to: {{{beyond}}}, hole: 4 mm}} }
                restrictions: [{between: [feed, clutch], hole: 1.5 mm}]
                lever: {D: [[line, feed]], N: [[feed, exhaust]]}
            gears: {D: {lever: D, apply: [low]}, "N": {lever: "N", apply: []}}
            """);
        Assert.Equal(apply, Only(unit.Gear("D")).Apply!.Millimetres, 3);
        Assert.Equal(release, Only(unit.Gear("N")).Release!.Millimetres, 3);

        static ClutchReport Only(GearReport gear) => Assert.Single(gear.Clutches);
    }

    [Fact]
    public void Two_balls_cannot_close_one_seat()
    {
        // The second takes it; the first is left with its other seat, and nothing fails.
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            parts:
              body:
                kind: casting
                passages: {pocket: {face: [1, 2]}}
                balls: {first: {in: pocket, seats: [1, 2]}, second: {in: pocket, seats: 1}}
              plate: {kind: sheet, openings: [{at: 1, hole: 4 mm}, {at: 2, hole: 4 mm}]}
              cover: {kind: casting, passages: {one: {face: 1}, two: {face: 2}}}
            gears: {G: {signals: {body.pocket: 500 kPa}, apply: []}}
            """);
        CircuitCase.Near(0, unit.Pressure("cover.one"));
        CircuitCase.Near(0, unit.Pressure("cover.two"));
    }

    [Theory]
    [InlineData("", "closes body:pocket~beyond", 0)] // the only way to the oil beyond is out of the pocket: it closes, and what is shut in there never had oil
    [InlineData(", [line, beyond]", "open", 800)] // oil that comes another way round keeps both sides level
    [InlineData(", [line, late], [late, beyond]", "open", 800)] // so does a way round through a third passage
    public void A_check_ball_in_level_oil_closes_only_where_oil_would_leave_by_its_seat(string stillFed, string position, double kilopascals)
    {
        // At rest the valve feeds what lies beyond the seat; oil lifts the ball, fills the pocket and moves the valve, which then feeds the pocket.
        var unit = CircuitCase.Body("line pocket beyond late", """
            balls: {check: {in: pocket, seats: {to: beyond, hole: 4 mm}}}
            valves: {v: {rest: [[line, beyond]], moved: [[line, pocket]STILL], moved-by: [{pressure: pocket, area: 100 mm2}], held-by: [{spring: 30 N}]}}
            """.Replace("STILL", stillFed, StringComparison.Ordinal), "signals: {body.line: 800 kPa}");
        Assert.Equal(position, unit.Position("body.check"));
        CircuitCase.Near(kilopascals, unit.Pressure("beyond"));
    }
}
