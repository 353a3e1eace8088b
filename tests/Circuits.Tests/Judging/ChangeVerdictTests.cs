using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Changes;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Circuits.Tests.Studies;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>Changes of gear in the judgement of an assembly, on faults whose outcome the trade knows (common practice, no source).</summary>
public class ChangeVerdictTests
{
    /// <summary>Two parts, one clutch each for two gears, through one hole each; every size given but the one that a case leaves out.</summary>
    private const string TwoGears = """
        fluid: {grade: ISO VG 32, temperature: 90 degC, density: 860 kg/m3}
        pump: {into: body.line, displacement: 15 mL/rev, speed: {idle: 700 rpm, road: 2000 rpm}, efficiency: 85 %}
        parts:
          body:
            kind: casting
            passages: {line: {}, low: {}, high: {}, low-room: {}, high-room: {}}
            regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa, port: 60 mm2}}
            lever:
              "N": [{join: [low, exhaust], area: 40 mm2}, {join: [high, exhaust], area: 40 mm2}]
              1: [{join: [line, low], area: 40 mm2}, {join: [high, exhaust], area: 40 mm2}]
              2: [{join: [line, high], area: 40 mm2}, {join: [low, exhaust], area: 40 mm2}]
            restrictions: [{between: [low, low-room], hole: 2 mm}, {between: [high, high-room], hole: 2 mm}]
        matched: {maker: {}}
        clutches:
          low: {at: body.low-room, area: 6000 mm2, return-spring: 500 N, rate: 40 N/mm, stroke: 2 mm, pack-rate: 20000 N/mm, plates: 16, friction: 0.12, radius: 60 mm}
          high: {at: body.high-room, area: 6000 mm2, return-spring: 500 N, rate: 40 N/mm, HIGH pack-rate: 20000 N/mm, plates: 16, friction: 0.12, radius: 60 mm}
        gears: {"N": {lever: "N", apply: []}, 1: {lever: 1, apply: [low]}, 2: {lever: 2, apply: [high]}}
        gearset: {planetaries: {only: {sun: 30, ring: 70}}, joined: [[input, only.sun]], output: only.carrier, clutches: {low: [only.ring, case], high: [only.ring, only.sun]}}
        """;

    private static WhatIfReport Ask(string file, params string[] words)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.DefaultOf(demo.Unit);
        var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests(words));
        Assert.Empty(resolved.Faults.Select(fault => fault.Words()));
        return WhatIf.Of(new UnitJudge(demo.Unit), start, resolved.Assembly!, resolved.Changes);
    }

    private static string[] Changed(WhatIfReport report) =>
        [.. report.Before.Changes.Zip(report.After.Changes).Where(pair => pair.First.Verdict != pair.Second.Verdict).Select(pair => $"{pair.Second.Plan.Name} {pair.Second.Verdict}")];

    // The ball lets the even clutch's oil out fast; without it that oil leaves through the feed hole alone, while the other clutch comes on.
    [Fact]
    public void A_clutch_whose_quick_way_out_is_gone_ties_up_with_the_next_one()
    {
        var report = Ask("firth/firth.yaml", "drop even-return");
        Assert.All(report.After.Gears, gear => Assert.Equal(Verdict.AsCharted, gear.Verdict));
        foreach (var change in (string[])["1-2", "3-4", "5-6"]) Assert.Contains($"{change} TieUp", Changed(report));
        Assert.Equal(ShiftVerdict.TieUp, report.After.WorstChange);
        Assert.Equal(FeelKind.TiesUpOnTheWay, report.After.Gears.Single(gear => gear.Gear == "2").Drive!.Feel.Kind);
        Assert.Contains(report.NewFindings, finding => finding is { Rule: "shift-tie-up", Severity: Severity.Error, Gear: "2" });
    }

    // Forward comes on in engagements alone. In every other change it is on before and after, and its hole meters nothing.
    [Fact]
    public void A_clutch_that_is_on_before_and_after_is_not_felt_whatever_opening_feeds_it()
    {
        var report = Ask("weir/weir.yaml", "drop forward-check");
        Assert.All(report.After.Gears.Where(gear => gear.Gear is not "1"), gear => Assert.Equal(FeelKind.AsItShould, gear.Drive!.Feel.Kind));
        foreach (var (was, now) in report.Before.Changes.Zip(report.After.Changes).Where(pair => pair.First.Plan.From.Apply.Any(use => use.Name == "forward")))
            Assert.Equal(was.Here.HoldsMs!.Value, now.Here.HoldsMs!.Value, 0.02 * was.Here.HoldsMs.Value);
        var (before, after) = report.Before.Changes.Zip(report.After.Changes).First(pair => pair.First.Plan.Name == "N-1");
        Assert.True(after.Here.HoldsMs < 0.8 * before.Here.HoldsMs);
        Assert.Contains(report.NewFindings, finding => finding is { Rule: "unmetered", Severity: Severity.Warning } && finding.Message.Words().EndsWith("no change of gear is worse for it", StringComparison.Ordinal));
    }

    // The band comes on against its release side's oil, which has to leave through this hole: a sixth of the area, six times as long.
    [Fact]
    public void A_servo_whose_release_oil_leaves_through_a_smaller_hole_comes_late() =>
        Assert.Contains("1-2 Delayed", Changed(Ask("weir/weir.yaml", "hole plate@24=0.8mm")));

    [Fact]
    public void A_line_at_three_times_its_pressure_makes_changes_harsh()
    {
        var report = Ask("weir/weir.yaml", "stick main=shut");
        foreach (var change in (string[])["1-2", "2-3", "3-4"]) Assert.Contains($"{change} Harsh", Changed(report));
    }

    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Matched_sets_change_gear_well(string name)
    {
        var unit = new DemoUnit($"{name}/{name}.yaml").Unit;
        var judge = new UnitJudge(unit);
        foreach (var set in unit.Matched)
        {
            var report = judge.Report(Assembly.Of(unit, set));
            Assert.NotEmpty(report.Changes);
            Assert.All(report.Changes, change => Assert.Equal(ShiftVerdict.Good, change.Verdict));
        }
    }

    // The same without the stroke of the clutch that comes on: were it half, the time would be half of what is assumed, below the limit that the file sets between the two.
    [Fact]
    public void A_flare_that_half_an_assumed_size_would_end_is_not_decided_and_names_the_size()
    {
        var unit = TwoGears.Replace("HIGH", "", StringComparison.Ordinal) + "\nthresholds: {flare: 250 ms}\nshifts: [{from: 1, to: 2, input-torque: 100 Nm}]";
        var report = CircuitCase.Of(unit, JudgeMode.Full).Report();
        Assert.Equal(ShiftVerdict.NotDecided, report.Changes.Single(change => change.Plan.Name == "1-2").Verdict);
        var finding = report.Findings.Single(finding => finding.Rule == "not-decided");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Matches("this hangs on the fill volume of clutch high, assumed [0-9.]+ mL: with half it is good$", finding.Message.Words());
        Assert.Equal(FeelKind.Undecided, report.Gears.Single(gear => gear.Gear == "2").Drive!.Feel.Kind);
    }

    // 12 cm3 through 2 mm at some 480 kPa: Q = 0.6 * 3.14 mm2 * 34 m/s = 64 mL/s, near 200 ms, in which nothing holds: a flare of more than the 100 ms allowed. The file says so itself.
    [Fact]
    public void A_flare_on_sizes_that_are_given_is_an_error()
    {
        var report = CircuitCase.Of(TwoGears.Replace("HIGH", "stroke: 2 mm,", StringComparison.Ordinal), JudgeMode.Full).Report();
        var change = report.Changes.Single(change => change.Plan.Name == "1-2");
        Assert.Equal(ShiftVerdict.Flare, change.Verdict);
        Assert.Equal(Severity.Error, report.Findings.Single(finding => finding.Rule == "shift-flare").Severity);
    }
}
