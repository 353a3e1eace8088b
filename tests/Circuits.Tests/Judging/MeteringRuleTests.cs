using System.Globalization;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>When a clutch counts as metered nowhere, and whose release is looked at.</summary>
public sealed class MeteringRuleTests
{
    // One hole on the way to the clutch, in and out; all else is wide. Matched sets have 2 and 2.4 mm; the wider one counts, and twice its area is the limit:
    // 2.4 mm times the root of two is 3.394 mm.
    [Theory]
    [InlineData(2.0, false)]
    [InlineData(2.9, false)]
    [InlineData(3.39, false)]
    [InlineData(3.40, true)]
    [InlineData(5.0, true)]
    public void More_than_twice_the_area_of_the_widest_matched_set_is_metered_nowhere(double millimetres, bool found)
    {
        var unit = CircuitCase.Of($$$$"""
            joints: {face: {between: [body, housing], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body:
                kind: casting
                passages: {line: {}, feed: {face: 1}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
                lever: {"N": [{join: [feed, exhaust], area: 60 mm2}], D: [{join: [line, feed], area: 60 mm2}]}
              plate:
                kind: sheet
                revisions:
                  small: {openings: [{at: 1, hole: 2 mm}]}
                  large: {openings: [{at: 1, hole: 2.4 mm}]}
                  other: {openings: [{at: 1, hole: {{{{millimetres.ToString(CultureInfo.InvariantCulture)}}}} mm}]}
              housing: {kind: casting, passages: {clutch: {face: 1}}}
            matched: {first: {plate: small}, second: {plate: large}}
            clutches: {only: {at: housing.clutch}}
            gears: {"N": {lever: "N", apply: []}, D: {lever: D, apply: [only]}}
            """);
        Assert.Equal(found, unit.Rules("plate=other").Contains("unmetered"));
    }

    // The clutch is on in B alone; its hole is smaller than in the matched set. It comes on in B, and lets go on the way into the gears beside it,
    // of which the first is told; one that is never entered from B has nothing to tell.
    [Theory]
    [InlineData("Y Z A B", "A B")]
    [InlineData("B C D E", "B C")]
    [InlineData("Z A B C D", "A B")]
    [InlineData("B", "B")]
    public void A_clutch_lets_go_only_into_the_neighbours_of_a_gear_that_applies_it(string gears, string told)
    {
        var unit = CircuitCase.Of($$$$"""
            joints: {face: {between: [body, housing], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body:
                kind: casting
                passages: {line: {}, feed: {face: 1}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
                lever: {"off": [{join: [feed, exhaust], area: 60 mm2}], "on": [{join: [line, feed], area: 60 mm2}]}
              plate: {kind: sheet, revisions: {1: {openings: [{at: 1, hole: 3 mm}]}, 2: {openings: [{at: 1, hole: 2 mm}]}}}
              housing: {kind: casting, passages: {clutch: {face: 1}}}
            matched: {first: {plate: 1}}
            clutches: {only: {at: housing.clutch}}
            gears: { {{{{string.Join(", ", gears.Split(' ').Select(gear => gear == "B" ? "B: {lever: \"on\", apply: [only]}" : $"\"{gear}\": {{lever: \"off\", apply: []}}"))}}}} }
            """);
        var found = unit.Report("plate=2").Findings.Where(finding => finding.Rule == "control-changed").Select(finding => finding.Gear!);
        Assert.Equal(told, string.Join(' ', found.Order(StringComparer.Ordinal)));
    }
}
