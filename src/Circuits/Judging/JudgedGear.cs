using System.Collections.Immutable;
using Circuits.Judging.Conditions;
using Circuits.Model;

namespace Circuits.Judging;

/// <summary>What verdicts rest on.</summary>
public enum JudgeMode
{
    /// <summary>Settled flow at the unit's conditions.</summary>
    Full,

    /// <summary>The static answer alone: a pump that always gives enough, springs by their preload. It gives no verdict that flow could not contradict.</summary>
    Quick,
}

/// <summary>A gear as it was judged.</summary>
/// <param name="Clutches">Its clutches, at the condition that decides.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Line">Line pressure there, kPa.</param>
/// <param name="Conditions">The gear at each condition; empty for the static answer.</param>
/// <param name="DecidedAt">The condition that decides, or null.</param>
internal readonly record struct JudgedGear(
    ImmutableArray<ClutchReport> Clutches, Verdict Verdict, double Line, ImmutableArray<ConditionReport> Conditions, ConditionReport? DecidedAt);
