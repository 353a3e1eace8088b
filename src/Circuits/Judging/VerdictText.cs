using Circuits.Judging.Changes;
using Circuits.Model;

namespace Circuits.Judging;

/// <summary>Verdicts as files, reports and scripts write them.</summary>
public static class VerdictText
{
    /// <summary>The word for a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.AsCharted => "as-charted",
        Verdict.NotDecided => "not-decided",
        Verdict.Weak => "weak",
        Verdict.OverPressure => "over-pressure",
        Verdict.Starved => "starved",
        Verdict.Unwanted => "unwanted",
        Verdict.Lost => "lost",
        Verdict.DidNotConverge => "did-not-converge",
        _ => "never-settles",
    };

    /// <summary>The word for a verdict of a change of gear.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(ShiftVerdict verdict) => verdict switch
    {
        ShiftVerdict.Good => "good",
        ShiftVerdict.NotDecided => "not-decided",
        ShiftVerdict.Harsh => "harsh",
        ShiftVerdict.Delayed => "delayed",
        ShiftVerdict.Flare => "flare",
        ShiftVerdict.TieUp => "tie-up",
        ShiftVerdict.NeverHolds => "never-holds",
        _ => "did-not-converge",
    };
}
