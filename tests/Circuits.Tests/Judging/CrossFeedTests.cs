using Circuits.Findings;
using Circuits.Judging;
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

    // Line and signal meet at a bleed in the matched set; the signal runs off by a hole 25 times as large, so it stands near nothing there.
    [Fact]
    public void A_bleed_of_the_matched_set_does_not_excuse_a_hole_beside_it()
    {
        var unit = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            pump: {into: body.line, relief: 800 kPa}
            parts:
              body:
                kind: casting
                passages: {line: {face: [1, 2]}}
              cover:
                kind: casting
                passages: {signal: {face: [1, 2]}}
                restrictions: [{between: [signal, exhaust], hole: 3 mm}]
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 0.6 mm}]}
                  wide: {openings: [{at: 1, hole: 0.6 mm}, {at: 2, hole: 5 mm}]}
                  narrow: {openings: [{at: 1, hole: 0.6 mm}, {at: 2, hole: 0.5 mm}]}
            matched: {early: {plate: 1}}
            gears: {G: {apply: []}}
            """);
        Assert.Equal("plate@2", Assert.Single(unit.Gear("G", "plate=wide").CrossFeeds).Through);
        Assert.Empty(unit.Gear("G", "plate=narrow").CrossFeeds);
    }

    // By effect: what moves nothing, shifts the passage by a twentieth of line at most and takes a fiftieth of the pump's oil at most is a note.
    // The signal is open to sump by 1.8 mm. Through a foreign hole of 0.8 mm it has (0.8/1.8)^4, 4 %, of line, and 0.6 * 0.5 mm2 * sqrt(2 * 580 kPa / 850 kg/m3),
    // 0.7 L/min, pass of the 60 that the pump gives; through 6 mm it has nearly line.
    // Drive stands at 1 / (1 + (1.5/4)^4), 98 %, of line: what comes in from apply beside it is a note, however wide the hole.
    [Theory]
    [InlineData("small", Severity.Note)]
    [InlineData("large", Severity.Error)]
    [InlineData("level", Severity.Note)]
    public void Foreign_oil_counts_by_what_it_does(string plate, Severity expected)
    {
        var unit = CircuitCase.Of(
            """
            joints: {face: {between: [body, cover], sheets: [plate]}}
            pump: {into: body.line, displacement: 100 mL/rev}
            parts:
              body:
                kind: casting
                passages: {line: {face: [1, 2, 5]}, drive: {face: [3, 4]}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
              cover:
                kind: casting
                passages: {signal: {face: 1}, drive: {face: [2, 4]}, apply: {face: [3, 5]}}
                restrictions: [{between: [signal, exhaust], hole: 1.8 mm}, {between: [drive, exhaust], hole: 1.5 mm}]
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 2, hole: 4 mm}, {at: 4, hole: 8 mm}, {at: 5, hole: 4 mm}]}
                  small: {based-on: 1, openings: [{at: 1, hole: 0.8 mm}]}
                  large: {based-on: 1, openings: [{at: 1, hole: 6 mm}]}
                  level: {based-on: 1, openings: [{at: 3, hole: 8 mm}]}
            matched: {early: {plate: 1}}
            clutches: {forward: {at: cover.apply}}
            gears: {G: {apply: [forward]}}
            """, JudgeMode.Full);
        var report = unit.Report($"plate={plate}");
        var found = report.Findings.Where(finding => finding.Rule == "cross-feed").ToList();
        Assert.Equal(expected, Assert.Single(found).Severity);
    }
}
