using System.Collections.Immutable;
using Circuits.Judging.Changes;
using Circuits.Studies.Spread;

namespace Circuits.Studies.Shifts;

/// <summary>Where the times of shifts of sampled units lie.</summary>
/// <param name="Request">How many samples, and which.</param>
/// <param name="Sizes">How many sizes carry a tolerance.</param>
/// <param name="Shifts">The shifts, as in the report.</param>
public sealed record ShiftSpread(SpreadRequest Request, int Sizes, ImmutableArray<ShiftRange> Shifts)
{
    /// <summary>The spread over the same shifts of sampled units.</summary>
    /// <param name="request">How many samples, and which.</param>
    /// <param name="sizes">How many sizes carry a tolerance.</param>
    /// <param name="samples">Each sample's shifts, in the same order; at least one sample.</param>
    public static ShiftSpread Of(SpreadRequest request, int sizes, ImmutableArray<ShiftTimes> samples) => new(
        request, sizes, [.. samples[0].Shifts.Select((shift, i) => ShiftRange.Of(shift.Plan, [.. samples.Select(sample => sample.Shifts[i])]))]);
}

/// <summary>The shifts of one sample.</summary>
/// <param name="Shifts">The shifts.</param>
public sealed record ShiftTimes(ImmutableArray<TimedShiftReport> Shifts);

/// <summary>One shift over all samples.</summary>
/// <param name="Plan">The shift.</param>
/// <param name="Verdicts">How many samples of a hundred come to each verdict, the most frequent first.</param>
/// <param name="Holds">From when on the gear holds, ms.</param>
/// <param name="LetsGo">When the gear that is left lets go, ms.</param>
/// <param name="Flare">How long too little capacity holds the torque, ms.</param>
/// <param name="TieUp">How long clutches work against each other, ms.</param>
/// <param name="Clutches">When each clutch touches, ms.</param>
public sealed record ShiftRange(
    ShiftPlan Plan, ImmutableArray<KeyValuePair<ShiftVerdict, double>> Verdicts, SpreadRange? Holds, SpreadRange? LetsGo, SpreadRange? Flare,
    SpreadRange? TieUp, ImmutableArray<KeyValuePair<string, SpreadRange?>> Clutches)
{
    internal static ShiftRange Of(ShiftPlan plan, ImmutableArray<TimedShiftReport> samples)
    {
        // A shift without an answer has no number either.
        ImmutableArray<TimedShiftReport> known = [.. samples.Where(shift => shift.Verdict != ShiftVerdict.DidNotConverge)];
        return new ShiftRange(
            plan,
            [
                .. samples.GroupBy(shift => shift.Verdict).Select(group => KeyValuePair.Create(group.Key, 100.0 * group.Count() / samples.Length))
                    .OrderByDescending(share => share.Value).ThenBy(share => share.Key),
            ],
            Range(shift => shift.HoldsMs), Range(shift => shift.LetsGoMs), Range(shift => shift.FlareMs), Range(shift => shift.TieUpMs),
            [
                .. known.SelectMany(shift => shift.Clutches).Where(clutch => clutch.Role == ClutchRole.OnComing).Select(clutch => clutch.Clutch).Distinct()
                    .Select(name => KeyValuePair.Create(name, Range(shift => shift.Clutches.FirstOrDefault(clutch => clutch.Clutch == name)?.FillMs))),
            ]);

        SpreadRange? Range(Func<TimedShiftReport, double?> value) => SpreadRange.Of([.. samples.Select(shift => shift.Verdict == ShiftVerdict.DidNotConverge ? null : value(shift))]);
    }
}
