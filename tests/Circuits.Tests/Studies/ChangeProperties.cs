using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Changes;
using Circuits.Tests.Demo;
using Circuits.Tests.Properties;
using Xunit;

namespace Circuits.Tests.Studies;

/// <summary>What holds of changes whatever the unit: undone, they leave no trace; without effect, they change nothing.</summary>
public class ChangeProperties
{
    public static TheoryData<string> Files => ["rill/rill.yaml", "weir/weir.yaml", "firth/firth.yaml"];

    /// <summary>A few of many, spread evenly, so that the full unit takes no minutes.</summary>
    private static IEnumerable<T> Some<T>(IReadOnlyList<T> all, int count) =>
        all.Where((_, i) => all.Count <= count || i * count / all.Count != (i - 1) * count / all.Count || i == 0);

    private static Digest Of(UnitJudge judge, Assembly assembly) => Digest.Of(judge.Report(assembly), name => name, _ => true);

    private static Assembly Do(Assembly from, params string[] words)
    {
        var resolved = ChangeResolver.Resolve(from, ChangeTests.Requests(words));
        Assert.Empty(resolved.Faults.Select(fault => $"{fault.Words()} {fault.Help}"));
        return resolved.Assembly!;
    }

    private static IEnumerable<(string Sheet, Opening Opening)> Holes(Assembly assembly) => assembly.Unit.Parts.Zip(assembly.Revisions)
        .SelectMany(pair => pair.Second.Openings.Select(opening => (pair.First.Name, opening)))
        .Where(pair => pair.opening.At.Length == 1 && pair.opening.Shape is Shape.Hole);

    [Theory]
    [MemberData(nameof(Files))]
    public void A_hole_made_wider_and_then_as_it_was_is_as_it_was(string file)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.DefaultOf(demo.Unit);
        var before = Of(demo.Judge, start);
        var mattered = 0;
        foreach (var (sheet, opening) in Some([.. Holes(start)], 8))
        {
            var was = ((Shape.Hole)opening.Shape).Diameter.Millimetres;
            var at = $"hole {sheet}@{opening.At[0].Name}=";
            var wider = Do(start, FormattableString.Invariant($"{at}{was + 4} mm"));
            if (before.Against(Of(demo.Judge, wider)) is not null) mattered++;
            Assert.Null(before.Against(Of(demo.Judge, Do(wider, FormattableString.Invariant($"{at}{was} mm")))));
        }

        // A hole beside a wider one, or one that is not on any way, may not matter; some do.
        Assert.True(mattered > 0);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_hole_plugged_and_drilled_as_it_was_is_as_it_was(string file)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.DefaultOf(demo.Unit);
        var before = Of(demo.Judge, start);
        foreach (var (sheet, opening) in Some([.. Holes(start).DistinctBy(pair => pair.Sheet + pair.Opening.At[0].Name)], 6))
        {
            var at = $"{sheet}@{opening.At[0].Name}";
            var plugged = Do(start, $"plug {at}");
            var size = ((Shape.Hole)opening.Shape).Diameter.Millimetres;
            Assert.Null(before.Against(Of(demo.Judge, Do(plugged, FormattableString.Invariant($"hole {at}={size} mm")))));
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_ball_left_out_and_put_back_is_as_it_was(string file)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.DefaultOf(demo.Unit);
        var before = Of(demo.Judge, start);
        var balls = start.Unit.Parts.Zip(start.Revisions).SelectMany(pair => pair.Second.Balls.Select(ball => (pair.First.Name, ball))).ToList();
        Assert.NotEmpty(balls);
        foreach (var (part, ball) in Some(balls, 4))
        {
            var size = FormattableString.Invariant($"{ball.Diameter!.Value.Millimetres} mm");
            Assert.Null(before.Against(Of(demo.Judge, Do(Do(start, $"drop {part}.{ball.Name}"), $"ball {ball.Pocket.Name}={size}"))));
            Assert.Null(before.Against(Of(demo.Judge, Do(start, $"ball {part}.{ball.Name}={size}"))));
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Plugging_what_is_metal_already_changes_nothing(string file)
    {
        var demo = new DemoUnit(file);
        foreach (var set in demo.Unit.Matched)
        {
            var start = Assembly.Of(demo.Unit, set);
            if (new Locations(start).All().FirstOrDefault(location => location.Openings.IsEmpty && !location.IsWindow) is not { } metal) continue;
            var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests($"plug {metal.Element}"));
            var report = WhatIf.Of(demo.Judge, start, resolved.Assembly!, resolved.Changes);
            Assert.False(report.Differs, string.Join('\n', report.NewFindings.Concat(report.VanishedFindings).Select(DemoUnit.Line)));
            Assert.Null(report.After.Assembly.Matched);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Fitting_a_part_is_the_assembly_with_that_part(string file)
    {
        var demo = new DemoUnit(file);
        var start = Assembly.DefaultOf(demo.Unit);
        var changes = demo.Unit.Parts.Zip(start.Revisions)
            .SelectMany(pair => pair.First.Revisions.Where(other => other != pair.Second).Select(other => (pair.First, other))).ToList();
        foreach (var (part, revision) in Some(changes, 5))
        {
            var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests($"fit {part.Name}={revision.Name}"));
            var report = WhatIf.Of(demo.Judge, start, resolved.Assembly!, resolved.Changes);
            var index = demo.Unit.Parts.IndexOf(part);
            var direct = demo.Judge.Report(Assembly.Of(demo.Unit, start.Revisions.SetItem(index, revision)));
            Assert.Null(Digest.Of(direct, name => name, _ => true).Against(Digest.Of(report.After, name => name, _ => true)));
            Assert.Equal(direct.Findings.Select(DemoUnit.Line), report.After.Findings.Select(DemoUnit.Line));

            // What is shown as different is what differs between the two reports, and nothing else is.
            var shown = report.Gears.Where(gear => gear.VerdictDiffers).Select(gear => gear.Gear);
            var differing = report.Before.Gears.Zip(direct.Gears).Where(pair => pair.First.Verdict != pair.Second.Verdict).Select(pair => pair.First.Gear);
            Assert.Equal(differing, shown);
        }
    }

    [Fact]
    public void A_change_and_its_inverse_show_each_other_swapped()
    {
        var demo = new DemoUnit("rill/rill.yaml");
        var (early, mixed) = (demo.Pick("1", "1"), demo.Pick("1", "2"));
        var (there, back) = (WhatIf.Of(demo.Judge, early, mixed, []), WhatIf.Of(demo.Judge, mixed, early, []));
        Assert.Equal(there.NewFindings.Select(DemoUnit.Line), back.VanishedFindings.Select(DemoUnit.Line));
        Assert.Equal(there.Gears.Select(gear => gear.Gear), back.Gears.Select(gear => gear.Gear));
        Assert.Equal(there.Gears.SelectMany(gear => gear.NewCrossFeeds.Select(feed => feed.Through)), back.Gears.SelectMany(gear => gear.VanishedCrossFeeds.Select(feed => feed.Through)));
    }
}
