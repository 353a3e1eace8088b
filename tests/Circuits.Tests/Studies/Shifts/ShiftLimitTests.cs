using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Shifts;
using Xunit;

namespace Circuits.Tests.Studies.Shifts;

/// <summary>When a shift is no longer good: what it came to against each limit.</summary>
public sealed class ShiftLimitTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(Repository.Root, "tests/Circuits.Tests/Cli/units/swap.yaml"));

    [Fact]
    public void Where_the_file_says_nothing()
    {
        var limits = Read("").Thresholds.Shifts;
        Assert.Equal((60, 400, 60, 1200), (limits.Flare, limits.Rise, limits.TieUp, limits.Delayed));
        Assert.Null(limits.Harsh);
    }

    // The low clutch lets go 120 ms early. However long it then flares: a limit just below that is passed, one just above is not.
    [Fact]
    public void A_flare_counts_from_its_limit_on()
    {
        var unit = Early(Read(""));
        var flare = Run(unit, ShiftLimits.Default).FlareMs;
        Assert.InRange(flare, 61, 150);
        Assert.Equal(ShiftVerdict.Flare, Run(unit, ShiftLimits.Default).Verdict);
        Assert.Equal(ShiftVerdict.Flare, Run(unit, ShiftLimits.Default with { Flare = flare - 0.01 }).Verdict);
        Assert.Equal(ShiftVerdict.Good, Run(unit, ShiftLimits.Default with { Flare = flare, Rise = 0, Delayed = 5000 }).Verdict);
    }

    [Fact]
    public void A_tie_up_counts_from_its_limit_on()
    {
        var unit = Moved(Read(""), 120);
        var tied = Run(unit, ShiftLimits.Default).TieUpMs;
        Assert.True(tied > 60);
        Assert.Equal(ShiftVerdict.TieUp, Run(unit, ShiftLimits.Default with { TieUp = tied - 0.01 }).Verdict);
        Assert.NotEqual(ShiftVerdict.TieUp, Run(unit, ShiftLimits.Default with { TieUp = tied }).Verdict);
    }

    [Fact]
    public void A_gear_that_holds_late_is_delayed()
    {
        var unit = Read("");
        var holds = Run(unit, ShiftLimits.Default).HoldsMs!.Value;
        Assert.Equal(ShiftVerdict.Delayed, Run(unit, ShiftLimits.Default with { Delayed = holds - 0.01 }).Verdict);
        Assert.Equal(ShiftVerdict.Good, Run(unit, ShiftLimits.Default with { Delayed = holds }).Verdict);
    }

    private static Unit Read(string more) => CircuitReader.ReadText(Text + more, "swap.yaml").Unit!;

    private static Unit Early(Unit unit) => Moved(unit, -120);

    /// <summary>The command of the low clutch in 1-2 moved by a time, ms.</summary>
    private static Unit Moved(Unit unit, double later)
    {
        var shift = unit.Shifts[0];
        var low = shift.Commands[0];
        var points = low.Points.Select((point, i) => i == 0 ? point : point with { Time = new(point.Time.Milliseconds + later) });
        return unit with { Shifts = [shift with { Commands = shift.Commands.SetItem(0, low with { Points = [.. points] }) }] };
    }

    private static TimedShiftReport Run(Unit unit, ShiftLimits limits)
    {
        var changed = unit with { Thresholds = unit.Thresholds with { Shifts = limits } };
        var assembly = Assembly.DefaultOf(changed);
        return Assert.Single(ShiftStudy.Run(
            assembly, null, ShiftStudy.ConditionsOf(changed), [ShiftPlans.Between(changed, changed.FindGear("1")!, changed.FindGear("2")!)]).Shifts).Here;
    }
}
