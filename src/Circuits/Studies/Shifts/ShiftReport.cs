using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Sensitivity;

namespace Circuits.Studies.Shifts;

/// <summary>Timed shifts of one assembly.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="NearestMatched">The matched sets that share most parts with it.</param>
/// <param name="Beside">The assembly that it is held against, or null: a matched set.</param>
/// <param name="Conditions">The conditions.</param>
/// <param name="Shifts">The shifts.</param>
/// <param name="Assumptions">What was assumed, as a sentence each.</param>
/// <param name="Findings">What is wrong.</param>
public sealed record ShiftReport(
    Assembly Assembly, ImmutableArray<string> NearestMatched, Assembly? Beside, ShiftConditions Conditions, ImmutableArray<ShiftPair> Shifts,
    ImmutableArray<Phrase> Assumptions, ImmutableArray<Finding> Findings)
{
    /// <summary>How far the times spread within the tolerances of sizes; null when it was not asked for.</summary>
    public ShiftSpread? Spread { get; init; }

    /// <summary>The missing sizes that matter to the times (ms), most first.</summary>
    public ImmutableArray<SizeEffect> Matters { get; init; } = [];
}
