using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Solving.Rules;

namespace Circuits.Judging.Changes;

/// <summary>Which rule a verdict falls under.</summary>
internal static class ShiftRules
{
    /// <summary>The rule; null for a good shift.</summary>
    public static Rule? Of(ShiftVerdict verdict) => verdict switch
    {
        ShiftVerdict.Good => null,
        ShiftVerdict.NotDecided => NotDecided.Rule,
        ShiftVerdict.Harsh => HarshShift.Rule,
        ShiftVerdict.Delayed => DelayedShift.Rule,
        ShiftVerdict.Flare => ShiftFlare.Rule,
        ShiftVerdict.TieUp => ShiftTieUp.Rule,
        ShiftVerdict.NeverHolds => NeverHolds.Rule,
        _ => DidNotConverge.Rule,
    };
}
