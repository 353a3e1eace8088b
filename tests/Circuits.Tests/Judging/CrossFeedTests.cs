using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>Where foreign oil comes in.</summary>
public sealed class CrossFeedTests
{
    [Fact]
    public void Foreign_oil_is_found_through_slots_of_two_sheets_that_lie_on_one_another()
    {
        // Sheet 2 of each brings a slot; only both together lead from line (1) by way of location 2 to the signal at 3.
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate, shim]}}
            pump: {into: body.line, relief: 800 kPa}
            parts:
              body:
                kind: casting
                passages: {line: {face: 1}, other: {face: 2}, signal: {face: [3, 4]}}
                restrictions: [{between: [signal, exhaust], hole: 1 mm}]
              cover: {kind: casting, passages: {line: {face: 1}, low: {face: [2, 5]}, signal: {face: 4}}}
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 5 mm}, {at: 4, hole: 5 mm}]}
                  2: {based-on: 1, openings: [{at: [1, 2], slot: 4 x 14 mm}]}
              shim:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 5 mm}, {at: 4, hole: 5 mm}]}
                  2: {based-on: 1, openings: [{at: [2, 5, 4], slot: 3 x 20 mm}]}
            matched: {early: {plate: 1, shim: 1}}
            gears: {G: {apply: []}}
            """);
        string[] Feeds(params string[] changes) =>
            [.. unit.Gear("G", changes).CrossFeeds.Select(feed => $"{feed.From} into {feed.Into}").Where(feed => feed.EndsWith("signal", StringComparison.Ordinal))];
        Assert.Empty(Feeds("plate=2"));
        Assert.Empty(Feeds("shim=2"));
        Assert.Contains("body.line into cover.signal", Feeds("plate=2", "shim=2"));
    }

    [Fact]
    public void A_dead_end_at_a_slot_feeds_nothing()
    {
        // Plate 2's slot joins the feed, the dead end beside it and the sink. All the sink gets is the feed's.
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            parts:
              body:
                kind: casting
                passages: {feed: {face: 1}, sink: {face: 2}}
                restrictions: [{between: [sink, exhaust], hole: 2 mm}]
              cover: {kind: casting, passages: {dead: {face: 1}}}
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 5 mm}]}
                  2: {openings: [{at: [1, 2], slot: 2 x 10 mm}]}
            matched: {early: {plate: 1}}
            gears: {G: {signals: {body.feed: 500 kPa}, apply: []}}
            """);
        var feed = Assert.Single(unit.Gear("G", "plate=2").CrossFeeds);
        Assert.Equal(("body.feed", "body.sink", "plate@1-2"), (feed.From, feed.Into, feed.Through));
    }
}
