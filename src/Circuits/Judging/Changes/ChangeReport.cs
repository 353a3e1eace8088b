using System.Collections.Immutable;
using Circuits.Judging.Conditions;

namespace Circuits.Judging.Changes;

/// <summary>A change of gear, timed at a condition.</summary>
/// <param name="At">The condition.</param>
/// <param name="Here">What it came to.</param>
/// <param name="Matched">What it comes to with the nearest matched set, or null without one; for a matched set itself null.</param>
public sealed record ChangeReport(OperatingPoint At, TimedShiftReport Here, TimedShiftReport? Matched)
{
    /// <summary>The change.</summary>
    public ShiftPlan Plan => Here.Plan;

    /// <summary>What it came to.</summary>
    public ShiftVerdict Verdict => Here.Verdict;

    /// <summary>Whether the nearest matched set does no better: the fault is the unit's own.</summary>
    public bool SharedByMatched => Matched is { } matched && matched.Verdict >= Verdict && Verdict > ShiftVerdict.NotDecided;

    /// <summary>Changes that come to the same for the same reason at several conditions, together, in the order of the first of them.</summary>
    /// <param name="changes">The changes.</param>
    public static IEnumerable<ImmutableArray<ChangeReport>> Alike(IEnumerable<ChangeReport> changes) =>
        changes.GroupBy(change => (change.Plan.Name, change.Verdict, change.Here.Reason, change.SharedByMatched)).Select(alike => alike.ToImmutableArray());
}
