using Circuits.Findings;
using Circuits.Judging.Sizes;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Judging.Changes;

/// <summary>
/// Whether a change of gear that is not good is so for a size that the file does not give: then half or double of it, or as much less or more as such a
/// size varies, would make it good, and nothing is decided until it is measured. Each size is varied alone.
/// </summary>
internal static class ChangeDoubt
{
    /// <summary>More missing sizes than this are not varied one by one; then only those of the clutches, the torque, the pump and the oil are.</summary>
    private const int Most = 80;

    /// <summary>The change as it is, or not decided, with the size to measure.</summary>
    /// <param name="change">The change, held against the matched set.</param>
    /// <param name="beside">The same change of the matched set that it is held against, or null.</param>
    /// <param name="assembly">The assembly.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="isRight">Whether a gear of the assembly is as it should be: where one is not, no missing size is to blame for the way to it or from it.</param>
    public static TimedShiftReport Of(TimedShiftReport change, TimedShiftReport? beside, Assembly assembly, ShiftConditions conditions, Func<GearState, bool> isRight)
    {
        var plan = change.Plan;
        if (change.Verdict is ShiftVerdict.Good or ShiftVerdict.DidNotConverge || !isRight(plan.From) || !isRight(plan.To)) return change;
        var limits = assembly.Unit.Thresholds.Shifts;
        if (conditions.Torque is null && plan.Profile?.InputTorque is null && (IsGood(assembly, change.Torque / 2) ? "half" : IsGood(assembly, change.Torque * 2) ? "double" : null) is { } torque)
            return Undecided(Phrase.Of($"the torque at the input, assumed {new Torque(change.Torque)}"), Phrase.Of($"{torque}"));

        var applied = plan.From.Apply.Concat(plan.To.Apply).Select(use => use.Name).ToHashSet();
        var all = MissingSizes.Of(assembly).Where(size => size.Clutch is null || applied.Contains(size.Clutch)).OrderBy(size => size.Clutch is null).ToList();
        foreach (var size in all.Count > Most ? all.Where(size => size.Clutch is not null) : all)
        {
            if (IsGood(size.Vary(-1), conditions.Torque)) return Undecided(Phrase.Of($"the {size.Name}, assumed {size.Assumed}"), size.Less);
            if (IsGood(size.Vary(1), conditions.Torque)) return Undecided(Phrase.Of($"the {size.Name}, assumed {size.Assumed}"), size.More);
        }

        return change;

        bool IsGood(Assembly varied, double? torque) =>
            ShiftJudge.Feel(new ShiftTimer(varied, conditions with { Torque = torque }, ShiftTimer.Tolerance).Time(plan), beside, limits).Verdict == ShiftVerdict.Good;

        TimedShiftReport Undecided(Phrase size, Phrase tried) => change with
        {
            Verdict = ShiftVerdict.NotDecided,
            Reason = Phrase.Of($"{change.Reason}; this hangs on {size}: with {tried} it is good"),
        };
    }
}
