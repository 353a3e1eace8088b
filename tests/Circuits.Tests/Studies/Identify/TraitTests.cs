using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>What can be found out about a part, derived from what the file says of its revisions.</summary>
public class TraitTests
{
    [Fact]
    public void A_sheet_differs_by_openings_their_sizes_and_cups()
    {
        var bench = Bench.Plates(
            """
            {at: 1, hole: 5 mm}, {at: 2, hole: 2 mm}, {at: 3, hole: 4 mm}, {at: 6, hole: 3 mm};
            {at: 1, hole: 6 mm}, {at: 2, hole: 2 mm, cup: true}, {at: [3, 4], slot: 3 x 12 mm}, {at: 6, hole: 3 mm}, {at: 6, hole: 3 mm};
            {at: 2, hole: 2 mm}, {at: [3, 4], slot: 4 x 12 mm}, {at: 6, hole: 3 mm}
            """);
        Assert.Equal(
            [
                "hole at 1 [Look]: yes | yes | no",
                "hole at 1 [PinGauge]: 5 | 6 | -",
                "cup at 2 [Look]: no | yes | no",
                "hole at 3 [Look]: yes | no | no",
                "hole at 3 [PinGauge]: 4 | - | -",
                "slot at 3-4 [Look]: no | yes | yes",
                "slot at 3-4 [PinGauge]: - | 3x12 | 4x12",
                "holes at 6 [Count]: 1 | 2 | 1",
            ],
            bench.Rows("plate"));
    }

    [Fact]
    public void What_the_file_does_not_say_of_an_opening_is_not_known()
    {
        var bench = Bench.Plates("{at: 1}; {at: 1, hole: 5 mm}; {at: 1, area: 9 mm2}; {at: 2, hole: 1 mm}");
        Assert.Contains("opening at 1 [Look]: yes | yes | yes | no", bench.Rows("plate"));
        Assert.Contains("hole at 1 [Look]: ? | yes | ? | no", bench.Rows("plate"));
        Assert.Contains("hole at 1 [PinGauge]: ? | 5 | ? | -", bench.Rows("plate"));
        Assert.Equal("1 2 3", bench.Remaining("plate", "measured 1=5 mm"));
        Assert.Equal("1 3", bench.Remaining("plate", "measured 1=6 mm"));
        Assert.Equal("4", bench.Remaining("plate", "not opening at 1"));
    }

    [Fact]
    public void A_gasket_differs_by_its_windows()
    {
        var bench = Bench.Of(
            """
            joints: {face: {between: [a, b], sheets: [paper]}}
            parts:
              a: {kind: casting, passages: {p: {face: [1, 2]}, q: {face: 3}}}
              b: {kind: casting, passages: {p: {face: [1, 2]}, q: {face: 3}}}
              paper: {kind: sheet, revisions: {1: {open-except: []}, 2: {open-except: [3]}, 3: {open-except: [3], openings: [{at: 2, hole: 1 mm}]}}}
            """);
        Assert.Equal(
            ["hole at 2 [Look]: no | no | yes", "hole at 2 [PinGauge]: - | - | 1", "window at 2 [Look]: yes | yes | no", "window at 3 [Look]: yes | no | no"],
            bench.Rows("paper").Order(StringComparer.Ordinal));
        Assert.Equal("2 3", bench.Remaining("paper", "seen paper at 3"));
        Assert.Equal("1", bench.Remaining("paper", "seen opening at 3"));
    }

    [Fact]
    public void A_casting_differs_by_where_it_is_open_and_by_what_is_parted_or_joined()
    {
        var bench = Bench.Of(
            """
            joints: {top: {between: [body, lid], locations: {1: [0, 0], 2: [10, 0], 3: [20, 0], 4: [30, 0], 5: [40, 0]}}, foot: {between: [body, base]}}
            parts:
              lid: {kind: casting, passages: {p: {top: [1, 2, 3, 4, 5]}}}
              base: {kind: casting, passages: {p: {foot: [21, 22]}}}
              body:
                kind: casting
                revisions:
                  plain: {passages: {p: {top: [1, 2, 3], foot: 21}, q: {top: 4}}}
                  ribbed: {passages: {p: {top: [1, 2], foot: 21}, r: {top: 3}, q: {top: 4}}}
                  joined: {passages: {p: {top: [1, 2, 3, 4], foot: 21}}}
                  lower: {passages: {p: {top: [1, 2, 3]}, s: {foot: 21}, q: {top: 4}}}
                  longer: {passages: {p: {top: [1, 2, 3], foot: [21, 22]}, q: {top: [4, 5]}}}
            """);
        Assert.Equal(
            [
                "passage at 5 [Look]: no | no | no | no | yes",
                "passage at 22 [Look]: no | no | no | no | yes",
                "rib between 2 and 3 [Look]: no | yes | no | no | no",
                "rib between 1 and 21 [Wire]: no | no | no | yes | no",
                "rib between 3 and 21 [Wire]: no | yes | no | yes | no",
                "track from 2 to 4 [Look]: no | no | yes | no | no",
                "track from 3 to 4 [Look]: no | no | yes | no | no",
                "track from 4 to 21 [Wire]: no | no | yes | no | no",
            ],
            bench.Rows("body"));
    }

    // A location that is solid in one revision is no wall to the others.
    [Fact]
    public void Solid_metal_is_no_rib()
    {
        var bench = Bench.Of(
            """
            joints: {face: {between: [a, b]}}
            parts:
              a: {kind: casting, revisions: {1: {passages: {p: {face: [1, 2]}}}, 2: {passages: {p: {face: 1}}}}}
              b: {kind: casting, passages: {p: {face: [1, 2]}}}
            """);
        Assert.Equal(["passage at 2 [Look]: yes | no"], bench.Rows("a"));
        Assert.Equal("", bench.Remaining("a", "seen a: rib between 1 and 2"));
        Assert.Equal("1", bench.Remaining("a", "seen a: track from 1 to 2"));
        Assert.Equal("2", bench.Remaining("a", "not a: track from 1 to 2"));
    }

    [Fact]
    public void A_location_that_two_joints_number_alike_is_named_with_its_joint()
    {
        var bench = Bench.Of(
            """
            joints: {top: {between: [a, b]}, foot: {between: [a, c]}}
            parts:
              a: {kind: casting, revisions: {1: {passages: {p: {top: [1, 2], foot: 1}}}, 2: {passages: {p: {top: 2, foot: 1}}}}}
              b: {kind: casting, passages: {p: {top: [1, 2]}}}
              c: {kind: casting, passages: {p: {foot: 1}}}
            """,
            "a");
        Assert.Equal(["passage at 1 on top [Look]: yes | no"], bench.Rows("a"));
        Assert.Equal("2", bench.Remaining("a", "not passage at 1 on top"));
        Assert.Equal("'passage at 1': a has a location 1 on joints top and foot: say 1 on top", bench.Read("seen passage at 1").Problem);
    }

    [Fact]
    public void Loose_balls_are_counted_by_size()
    {
        var bench = Bench.Of(
            """
            parts:
              body: {kind: casting, passages: {p: {}, q: {}, r: {}}}
              balls:
                kind: ball-set
                revisions:
                  1: {balls: {x: {in: body.p, seats: [{to: body.q, hole: 3 mm}], diameter: 6 mm}, y: {in: body.q, seats: [{to: body.r, hole: 3 mm}], diameter: 6 mm}}}
                  2: {based-on: 1, balls: {y: {diameter: 8 mm}}}
                  3: {based-on: 1, balls: {y: null}}
                  4: {based-on: 1, balls: {y: {diameter: null}}}
            """);
        Assert.Equal(
            [
                "seat between body.q and body.r [Look]: yes | yes | no | yes",
                "seat between body.q and body.r [PinGauge]: 3 | 3 | - | 3",
                "ball in body.q [LookAsFound]: yes | yes | no | yes",
                "ball in body.q [Caliper]: 6 | 8 | - | ?",
                "balls [Count]: 2 | 2 | 1 | 2",
                "balls of 6 mm [Count]: 2 | 1 | 1 | ?",
                "balls of 8 mm [Count]: 0 | 1 | 0 | ?",
            ],
            bench.Rows("balls"));
        Assert.Equal("1 4", bench.Remaining("balls", "seen two balls of 6 mm"));
        Assert.Equal("2 4", bench.Remaining("balls", "seen 1 ball of 8 mm"));
        Assert.Equal("3", bench.Remaining("balls", "seen 1 ball"));
        Assert.Equal("4", bench.Remaining("balls", "seen 1 ball of 5 mm"));
        Assert.Equal("1 3 4", bench.Remaining("balls", "seen no balls of 8 mm"));
        Assert.Equal("2 3 4", bench.Remaining("balls", "not 2 balls of 6 mm"));
    }

    [Fact]
    public void Elements_differ_by_presence_and_by_what_a_bench_can_tell()
    {
        var bench = Bench.Of(
            """
            parts:
              body:
                kind: casting
                revisions:
                  1:
                    passages: {line: {}, p: {}, q: {}, r: {}}
                    valves: {v: {rest: [[p, q]], moved: [[p, r]], moved-by: [{pressure: line}], held-by: [{spring: 4 N}]}}
                    regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}
                    solenoids: {s: {feed: line, out: p, kind: switching, at-rest: low}, t: {feed: line, out: q, kind: switching, at-rest: low}}
                    restrictions: [{between: [p, q], hole: 2 mm}]
                    accumulators: {soft: {at: q, area: 314.159 mm2}}
                    marks: [blue paint, cast letter A]
                  2:
                    based-on: 1
                    valves: {w: {rest: [[p, q]], moved: [[p, r]], moved-by: [{pressure: line}], held-by: [{spring: 4 N}]}}
                    solenoids: {s: {at-rest: high}, t: {kind: pressure}}
                    restrictions: [{between: [q, p], hole: 3 mm}]
                    accumulators: {soft: {area: 490.874 mm2}}
                    marks: [blue paint, cast letter B]
              drum:
                kind: drum
                revisions: {1: {clutches: {c: {plates: 8}}}, 2: {clutches: {c: {plates: 10}}}}
            clutches: {c: {at: body.r}}
            """);
        Assert.Equal(
            [
                "drilled hole between p and q [PinGauge]: 2 | 3",
                "valve w [Look]: no | yes",
                "solenoid s passes air to its outlet when dead [Air]: no | yes",
                "solenoid t holds a pressure between off and full [Tester]: no | yes",
                "accumulator soft [Caliper]: 20 | 25",
                "cast letter A [Look]: yes | no",
                "cast letter B [Look]: no | yes",
            ],
            bench.Rows("body"));
        Assert.Equal(["friction faces of c [Count]: 8 | 10"], bench.Rows("drum"));
        Assert.Equal("2", bench.Remaining("body", "measured p~q=3 mm"));
        Assert.Equal("2", bench.Remaining("body", "measured body@drilled hole between p and q=3 mm"));
        Assert.Equal("1", bench.Remaining("body", "measured accumulator soft=20.0 mm"));
        Assert.Equal("1", bench.Remaining("drum", "seen eight friction faces of c"));
    }

    // Springs, lands and ports need a file, not eyes: revisions that differ in nothing else are said to be alike, with the reason.
    [Fact]
    public void What_nobody_can_see_tells_nothing_apart_but_is_named()
    {
        var bench = Bench.Of(
            """
            parts:
              body:
                kind: casting
                revisions:
                  1:
                    passages: {line: {}, p: {}, q: {}}
                    valves: {v: {rest: [[p, q]], moved: [[p, q]], moved-by: [{pressure: line}], held-by: [{spring: 4 N}]}}
                    regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}, second: {from: line, out: p}}
                  2: {based-on: 1, valves: {v: {held-by: [{spring: 5 N}]}}, regulators: {main: {spring: 450 kPa}}}
            """);
        Assert.Empty(bench.Rows("body"));
        var body = Assert.Single(bench.Run(0.05).Parts);
        Assert.Equal(Circuits.Studies.Identify.PartStatus.Alike, body.Status);
        Assert.Equal(["valve v", "regulator main"], Assert.Single(body.Alike).Unseen);
        Assert.Empty(body.Steps);
    }

    // Both plates are blank at 2, though only one says so.
    [Fact]
    public void A_mark_that_says_what_is_derived_holds_for_every_revision()
    {
        var bench = Bench.Of(
            """
            joints: {face: {between: [a, b], sheets: [plate]}}
            parts:
              a: {kind: casting, passages: {p: {face: [1, 2]}}}
              b: {kind: casting, passages: {p: {face: [1, 2]}}}
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 2 mm}]}
                  2: {openings: [{at: 1, hole: 3 mm}], marks: [blank at location 2, a hole at 2]}
                  3: {openings: [{at: 2, hole: 3 mm}], marks: [hole at location 2]}
            """,
            "plate");
        // "a hole at 2" is untrue of plate 2, so it stays the author's.
        Assert.Contains("a hole at 2 [Look]: no | yes | no", bench.Rows("plate"));
        Assert.DoesNotContain(bench.Rows("plate"), row => row.StartsWith("blank", StringComparison.Ordinal) || row.StartsWith("hole at location", StringComparison.Ordinal));
        Assert.Equal("1 2", bench.Remaining("plate", "seen blank at location 2"));
        Assert.Equal("3", bench.Remaining("plate", "seen hole at location 2"));
    }
}
