using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Changes;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies;

/// <summary>What changes do to the demo units, reasoned by hand on their pages.</summary>
public class WhatIfTests
{
    private static WhatIfReport Ask(string file, string set, params string[] words)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.Of(demo.Unit, demo.Unit.Matched.Single(each => each.Name == set));
        var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests(words));
        Assert.Empty(resolved.Faults.Select(fault => fault.Words()));
        return WhatIf.Of(demo.Judge, start, resolved.Assembly!, resolved.Changes);
    }

    // The page of the teaching unit: the slot lets the pocket's oil into second, which the manual valve drains in R alone.
    [Fact]
    public void The_new_plate_on_the_old_body_loses_reverse_and_says_where_the_oil_stops()
    {
        var report = Ask("rill/rill.yaml", "early", "fit plate=2");
        var reverse = report.Gears.Single(gear => gear.VerdictDiffers);
        Assert.Equal("R", reverse.Gear);
        var high = reverse.Clutches.Single(clutch => clutch.Clutch == "high");
        Assert.Equal((ClutchState.Applied, ClutchState.Released), (high.Before.State, high.After.State));
        Assert.Equal("plate@6-7", high.After.StoppedAt?.Element);
        Assert.Equal("plate@6-7", Assert.Single(reverse.NewCrossFeeds).Through);
        Assert.Equal("no reverse", reverse.After.Drive?.Feel.Words());
        Assert.Contains(report.NewFindings, finding => finding is { Rule: "lost-supply", Gear: "R" });
        Assert.DoesNotContain(report.NewFindings, finding => finding.Rule == "assumed-size");
    }

    // With the slot closed again, plate 2 is plate 1.
    [Fact]
    public void The_new_plate_with_its_slot_plugged_is_the_old_plate()
    {
        var report = Ask("rill/rill.yaml", "early", "fit plate=2", "plug plate@6-7");
        Assert.False(report.Differs);
        Assert.Equal(["fit plate 2 instead of 1", "plug plate@6-7"], report.Changes.Select(change => change.Text.Words()));
        Assert.Null(report.After.Assembly.Matched);
    }

    // Second oil goes by 6, slot, 7, 5 in late, straight along the track in early: another way through the same openings that control.
    [Fact]
    public void Another_way_of_the_oil_is_told()
    {
        var report = Ask("rill/rill.yaml", "early", "fit late");
        Assert.Equal("late", report.After.Assembly.Matched);
        var high = report.Gears.Single(gear => gear.Gear == "2").Clutches.Single();
        Assert.True(high.SupplyWayDiffers);
        Assert.Equal(["body.lever", "plate@5", "plate@12", "plate@13"], high.Before.SupplyWay);
        Assert.Equal(["body.lever", "plate@6-7", "plate@5", "plate@12", "plate@13"], high.After.SupplyWay);
        Assert.False(high.StateDiffers);
    }

    // The high clutch fills through plate@13 alone: a quarter of the area, four times the time, still far from late. The opening is told, and that nobody feels it.
    [Fact]
    public void A_smaller_hole_controls_the_clutch_and_is_told_with_what_it_comes_to()
    {
        var report = Ask("rill/rill.yaml", "early", "hole plate@13=1.5mm");
        var second = report.Gears.Single(gear => gear.Gear == "2");
        var high = second.Clutches.Single(clutch => clutch.Clutch == "high");
        Assert.True(high.ApplyDiffers);
        Assert.Equal(1.5, high.After.Apply!.Millimetres, 6);
        Assert.Equal("as it should", second.After.Drive?.Feel.Words());
        Assert.All(report.After.Changes, change => Assert.Equal(ShiftVerdict.Good, change.Verdict));
        var told = report.NewFindings.First(finding => finding.Rule == "control-changed").Message.Words();
        Assert.Matches(@"on 1-2 high holds in \d+ ms, \d+ ms with the matched set; no change of gear is worse for it$", told);
        var (now, was) = report.After.Changes.Zip(report.Before.Changes).Where(pair => pair.First.Plan.Name == "1-2").Select(pair => (pair.First.Here.HoldsMs!.Value, pair.Second.Here.HoldsMs!.Value)).Single();
        Assert.InRange(now / was, 3, 4.2);
        Assert.Empty(report.VanishedFindings);
    }

    // A 5.5 mm ball still covers the 5 mm seats; a 4 mm ball falls through both, as if it were not there.
    [Fact]
    public void A_ball_matters_only_once_it_is_smaller_than_its_seats()
    {
        Assert.False(Ask("rill/rill.yaml", "early", "ball two-way=5.5mm").Differs);
        var fallen = Ask("rill/rill.yaml", "early", "ball two-way=4mm");
        Assert.Contains(fallen.NewFindings, finding => finding.Rule == "ball-falls-through");
        var dropped = Ask("rill/rill.yaml", "early", "drop two-way");
        Assert.Equal(
            dropped.After.Gears.SelectMany(gear => gear.Clutches).Select(clutch => Math.Round(clutch.Kilopascals, 6)),
            fallen.After.Gears.SelectMany(gear => gear.Clutches).Select(clutch => Math.Round(clutch.Kilopascals, 6)));
    }

    // A part that was worked on is still the part that it was: what the assembly is held against does not change.
    [Fact]
    public void Work_on_a_part_does_not_change_which_matched_set_is_nearest()
    {
        var demo = new DemoUnit("rill/rill.yaml");
        var start = demo.Pick("2", "1");
        var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests("hole plate@2=3.6mm"));
        Assert.Equal(["early", "late"], demo.Judge.Report(start).NearestMatched);
        Assert.Equal(["early", "late"], demo.Judge.Report(resolved.Assembly!).NearestMatched);
    }

    // Of a finding in which only the pressure differs nothing is said.
    [Fact]
    public void A_finding_with_another_pressure_is_the_same_finding()
    {
        var demo = new DemoUnit("rill/rill.yaml");
        var start = demo.Pick("1", "2");
        var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests("hole plate@2=3.6mm"));
        var report = WhatIf.Of(demo.Judge, start, resolved.Assembly!, resolved.Changes);
        Assert.True(report.Differs);
        Assert.DoesNotContain(report.NewFindings, finding => finding.Rule == "lost-supply");
        Assert.DoesNotContain(report.VanishedFindings, finding => finding.Rule == "lost-supply");
    }

    // One truth: a row says what each question says when it is asked alone.
    [Fact]
    public void Many_at_once_say_what_each_says_alone()
    {
        string[][] asked = [["hole plate@13=0.6mm"], ["fit plate=2"], ["drop two-way"], ["stick manual-shift=moved"], []];
        var demo = new DemoUnit("rill/rill.yaml");
        var start = Assembly.DefaultOf(demo.Unit);
        asked = [.. asked.Where(words => ChangeResolver.Resolve(start, ChangeTests.Requests(words)).Assembly is not null)];
        var rows = ManyChanges.Run(demo.Unit, JudgeMode.Full, [.. asked.Select(words => (string.Join(' ', words), ChangeResolver.Resolve(start, ChangeTests.Requests(words)).Assembly!))], 2, TestContext.Current.CancellationToken).ToList();
        Assert.Equal(asked.Select(words => string.Join(' ', words)), rows.Select(row => row.Name));
        foreach (var (words, row) in asked.Zip(rows))
        {
            var alone = Ask("rill/rill.yaml", demo.Unit.Matched[0].Name, words).After;
            Assert.Equal(alone.Gears.Select(gear => gear.Verdict), row.Verdicts);
            Assert.Equal(alone.WorstChange, row.WorstChange);
        }

        Assert.Contains(rows, row => row.IsGood);
        Assert.Contains(rows, row => row.Verdict == Verdict.Lost);
        Assert.Contains(rows, row => row is { Verdict: Verdict.AsCharted, IsGood: false });
    }
}
