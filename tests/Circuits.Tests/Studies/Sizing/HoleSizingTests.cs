using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Changes;
using Circuits.Studies.Shifts;
using Circuits.Studies.Sizing;
using Xunit;

namespace Circuits.Tests.Studies.Sizing;

public sealed class HoleSizingTests
{
    private static readonly Unit Swap = CircuitReader.ReadFile(Path.Combine(Repository.Root, "tests/Circuits.Tests/Cli/units/swap.yaml")).Unit!;

    [Theory]
    [InlineData("plate@2", "1-2", WantedTime.Fill, 180)]
    [InlineData("plate@1", "1-2", WantedTime.Gap, 5)]
    [InlineData("plate@1", "2-1", WantedTime.Hold, 300)]
    [InlineData("plate@2", "2-1", WantedTime.Release, 15)]
    public void The_hole_that_is_found_gives_the_time_when_it_is_drilled(string location, string shift, WantedTime time, double ms)
    {
        var report = Size(location, shift, time, ms);
        Assert.Equal(SizeOutcome.Found, report.Outcome);
        var near = HoleSearch.Near(ms);
        Assert.Equal(ms, Time(report.Hole!.Millimetres), near);
        Assert.True(report.DrillBelow!.Millimetres <= report.Hole.Millimetres && report.DrillAbove!.Millimetres >= report.Hole.Millimetres);
        Assert.Equal(report.DrillBelow.Ms!.Value, Time(report.DrillBelow.Millimetres), 0.01);
        Assert.InRange(ms, Math.Min(report.DrillBelow.Ms!.Value, report.DrillAbove.Ms!.Value) - near, Math.Max(report.DrillBelow.Ms!.Value, report.DrillAbove.Ms!.Value) + near);

        double Time(double diameter)
        {
            var drilled = ChangedAssembly.Of(Assembly.DefaultOf(Swap), [report.Work! is SetHole hole ? hole with { Hole = new Shape.Hole(new(diameter), "") } : report.Work!]);
            var timed = ShiftStudy.Run(drilled, Assembly.DefaultOf(Swap), ShiftStudy.ConditionsOf(Swap), [Plan(shift)]).Shifts[0].Here;
            return (time switch
            {
                WantedTime.Fill => timed.Clutches.Single(clutch => clutch.Role == ClutchRole.OnComing).FillMs,
                WantedTime.Hold => timed.HoldsMs,
                WantedTime.Release => timed.LetsGoMs,
                _ => timed.GapMs,
            })!.Value;
        }
    }

    /// <summary>While the command holds still and the hole is the only resistance, filling time goes with one over its area.</summary>
    [Fact]
    public void Half_the_time_takes_twice_the_area()
    {
        var slow = Size("plate@1", "N-1", WantedTime.Fill, 800).Hole!.Millimetres;
        var fast = Size("plate@1", "N-1", WantedTime.Fill, 400).Hole!.Millimetres;
        Assert.Equal(Math.Sqrt(2), fast / slow, 0.03);
    }

    [Fact]
    public void Every_other_shift_that_the_hole_changes_is_told()
    {
        var report = Size("plate@1", "1-2", WantedTime.Gap, 0);
        Assert.Equal(["N-1", "1-2", "2-1"], report.Shifts.Select(change => change.Before.Plan.Name));
        Assert.All(report.Shifts, change => Assert.NotEqual(change.Before.Clutches, change.After.Clutches));
        Assert.Equal(["N", "1", "2"], report.Gears.Select(gear => gear.Gear));
        Assert.Equal(["1-2", "2-1"], Size("plate@2", "1-2", WantedTime.Fill, 200).Shifts.Select(change => change.Before.Plan.Name));
    }

    [Fact]
    public void No_hole_is_a_finding()
    {
        Assert.Equal("no-such-hole", Assert.Single(Size("plate@2", "1-2", WantedTime.Fill, 1).Findings).Rule);
        Assert.Equal(SizeOutcome.Unaffected, Size("plate@1", "1-2", WantedTime.Fill, 100).Outcome);
    }

    [Theory]
    [InlineData("plate@7", "1-2", null, "unknown-target")]
    [InlineData("plate@2", "1-2", "low", "unknown-target")]
    [InlineData("plate@2", "1-N", null, "unknown-target")]
    public void What_cannot_be_sized_is_a_fault(string location, string shift, string? clutch, string rule)
    {
        var (report, faults) = Run(location, shift, WantedTime.Fill, 100, clutch);
        Assert.Null(report);
        Assert.Equal(rule, Assert.Single(faults).Rule);
    }

    private static ShiftPlan Plan(string shift) =>
        ShiftPlans.Between(Swap, Swap.FindGear(shift.Split('-')[0])!, Swap.FindGear(shift.Split('-')[1])!);

    private static SizeReport Size(string location, string shift, WantedTime time, double ms) => Run(location, shift, time, ms, null).Report!;

    private static (SizeReport? Report, System.Collections.Immutable.ImmutableArray<Finding> Faults) Run(string location, string shift, WantedTime time, double ms, string? clutch) =>
        HoleSizing.Run(
            new UnitJudge(Swap), Assembly.DefaultOf(Swap), new SizeRequest(location, Plan(shift), time, ms, clutch, HoleSizing.Least, null),
            ShiftStudy.ConditionsOf(Swap), new Place("--at", 0, 0));
}
