using Circuits.Findings;
using Circuits.Judging;
using Circuits.Reading;
using Circuits.Studies;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>A matched set that cannot work is a fault of the file, and is told with the line that is wrong. What a sound unit has is common practice, no source.</summary>
public class MatchedSetTests
{
    // A solenoid moves a spool, which feeds the clutch and drains it at rest; a regulator gives less than line.
    private const string Sound = """
        fluid: {grade: ISO VG 32}
        joints: {face: {between: [body, cover], sheets: [plate], locations: {1: [10, 10], 2: [16, 10]}}}
        parts:
          body:
            kind: casting
            revisions:
              1:
                passages: {line: {}, forward: {face: 1}, signal: {face: 2}, low: {}}
                valves:
                  feed: {rest: [[forward, exhaust]], moved: [[line, forward]], moved-by: [{pressure: signal, area: 100 mm2}], held-by: [{spring: 10 N}]}
                solenoids:
                  shift: {feed: line, out: signal, kind: switching, at-rest: low}
                regulators:
                  main: {holds: line, spills-to: exhaust, spring: 500 kPa}
                  limit: {from: line, out: low, spring: 300 kPa}
          plate: {kind: sheet, revisions: {1: {openings: [{at: 1, hole: 3 mm}, {at: 2, hole: 3 mm}]}}}
          cover: {kind: casting, revisions: {1: {passages: {forward: {face: 1}, signal: {face: 2}}}}}
        pump: {into: body.line, displacement: 12 mL/rev, speed: {idle: 700 rpm, road: 2000 rpm}}
        clutches: {forward: {at: cover.forward}}
        gears: {"N": {energize: [], commands: {}, apply: []}, 1: {energize: [shift], apply: [forward]}}
        matched: {only: {body: 1, plate: 1, cover: 1}}
        """;

    [Fact]
    public void A_sound_set_has_none_of_these() => Assert.DoesNotContain(Checked(Sound), finding => finding.Severity != Severity.Note);

    [Theory]
    [InlineData("rest: [[forward, exhaust]]", "rest: []", "no-way-to-sump", Severity.Error, "body.forward keeps 500 kPa: body.feed, which fed it, gives it no drain", 13)]
    [InlineData("feed: line, out: signal", "feed: signal, out: line", "solenoid-reversed", Severity.Error, "body.signal, which it takes from, has no supply while it is shut, and body.line, which it feeds, has", 15)]
    [InlineData("spring: 300 kPa", "spring: 900 kPa", "never-regulates", Severity.Warning, "body.limit regulates in no gear: it is set to 900 kPa or more", 18)]
    public void A_set_that_cannot_work_is_told_with_its_line(string sound, string wrong, string rule, Severity severity, string words, int line)
    {
        var finding = Assert.Single(Checked(Edited(sound, wrong)), finding => finding.Rule == rule);
        Assert.Equal((severity, line), (finding.Severity, finding.Place.Line));
        Assert.Contains(words, finding.Words(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("spills-to: exhaust", "spills-to: line", "named-twice", "regulator body.main spills body.line into itself")]
    [InlineData("{at: 1, hole: 3 mm}", "{at: 1, hole: 9.5 mm}", "hole-reaches-next", "opening plate@1: a hole of 9.5 mm runs into the hole of 3 mm at 2, which is 6 mm away")]
    [InlineData("[{at: 1, hole: 3 mm}, {at: 2, hole: 3 mm}]", "[{at: 1, hole: 12.5 mm}]", "hole-reaches-next", "opening plate@1: a hole of 12.5 mm reaches location 2, which is 6 mm away")]
    public void What_no_part_can_be_is_not_read(string sound, string wrong, string rule, string words)
    {
        var read = CircuitReader.ReadText($"format: 1\nunit: Case\ndata: invented\n{Edited(sound, wrong)}", "case.yaml");
        Assert.Null(read.Unit);
        Assert.Contains(read.Findings, finding => finding.Rule == rule && finding.Words() == words);
    }

    /// <summary>6 mm apart: two holes of 6 mm touch and do not run into one another, and one of 12 mm ends where the next location's middle is.</summary>
    [Theory]
    [InlineData("[{at: 1, hole: 3 mm}, {at: 2, hole: 3 mm}]", "[{at: 1, hole: 6 mm}, {at: 2, hole: 6 mm}]")]
    [InlineData("[{at: 1, hole: 3 mm}, {at: 2, hole: 3 mm}]", "[{at: 1, hole: 12 mm}]")]
    [InlineData("[{at: 1, hole: 3 mm}, {at: 2, hole: 3 mm}]", "[{at: 1, hole: 3 mm}, {at: 1, hole: 2 mm}, {at: 2, hole: 3 mm}]")]
    public void Holes_that_touch_are_two(string sound, string other) => Assert.DoesNotContain(CircuitReader.ReadText($"format: 1\nunit: Case\ndata: invented\n{Edited(sound, other)}", "case.yaml").Findings, finding => finding.Rule == "hole-reaches-next");

    // A file that is being written: nobody has given 3 its solenoid yet. 2 shows how the clutch is fed, through the valve; the metal at 5, where line and
    // the clutch also face one another, is as it should be.
    [Theory]
    [InlineData("matched: {first: {plate: 1}}\n")]
    [InlineData("")]
    public void Without_a_sound_set_the_gear_that_has_the_clutch_shows_its_way(string matched)
    {
        var judge = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body:
                kind: casting
                passages: {line: {face: [1, 5]}, drive: {face: 2}, signal: {}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
                solenoids: {feed: {kind: switching, feed: line, out: signal, to: exhaust, at-rest: low}}
                valves: {shift: {rest: [[drive, exhaust]], moved: [[line, drive]], moved-by: [{pressure: signal, area: 50 mm2}], held-by: [{spring: 10 N}]}}
              cover: {kind: casting, passages: {clutch: {face: [2, 5]}}}
              plate: {kind: sheet, openings: [{at: 2, hole: 3 mm}]}
            clutches: {direct: {at: cover.clutch}}
            gears:
              1: {energize: [], apply: []}
              2: {energize: [feed], apply: [direct]}
              3: {energize: [], apply: [direct]}

            """ + matched, JudgeMode.Full);
        var report = judge.Report();
        Assert.Equal("direct is not applied in 3 at idle-hot: its oil stops at body.shift (valve at rest)", Assert.Single(report.Findings, finding => finding.Rule == "lost-supply").Words());
        Assert.DoesNotContain(report.Findings, finding => finding.Rule == "blanked-feed");
        Assert.Contains("body.shift", Circuits.Rendering.TraceText.Of(judge.Assembly(), [], [judge.Judge.Trace(judge.Assembly(), "3", "direct")], new()));
    }

    // The valve's own outlet holds it: 600 kPa on 100 mm2 against 10 N. 1 and 3 move it by the solenoid; in 2 that is off, and only from rest does the valve rest.
    [Theory]
    [InlineData("1: {energize: [feed], apply: [high]}", "2 is as charted from rest alone: from 1, high is unwanted; from 3, high is unwanted")]
    [InlineData("1: {energize: [], apply: []}", null)]
    public void A_gear_that_no_neighbour_leads_to_is_an_error(string first, string? told)
    {
        var unit = CircuitCase.Of("""
            pump: {into: body.line}
            parts:
              body:
                kind: casting
                passages: {line: {}, signal: {}, high: {}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
                solenoids: {feed: {kind: switching, feed: line, out: signal, to: exhaust, at-rest: low}}
                valves: {latch: {rest: [[high, exhaust]], moved: [[line, high]], moved-by: [{pressure: signal, area: 100 mm2}, {pressure: high, area: 100 mm2}], held-by: [{spring: 10 N}]}}
            matched: {first: {body: 1}}
            clutches: {high: {at: body.high}}
            gears:
              FIRST
              2: {energize: [], apply: []}
              3: {energize: [feed], apply: [high]}
            """.Replace("FIRST", first, StringComparison.Ordinal), JudgeMode.Full);
        var found = unit.Report().Findings.Where(finding => finding.Rule == "wrong-from-neighbours").Select(finding => finding.Words());
        Assert.Equal(told is null ? [] : [told], found);
    }

    private static string Edited(string sound, string wrong)
    {
        Assert.Contains(sound, Sound, StringComparison.Ordinal);
        return Sound.Replace(sound, wrong, StringComparison.Ordinal);
    }

    private static System.Collections.Immutable.ImmutableArray<Finding> Checked(string text) => UnitCheck.Run(CircuitCase.Of(text, JudgeMode.Full).Judge).Findings;
}
