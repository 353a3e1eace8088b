using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Judging.Conditions;

/// <summary>A gear at one of the conditions under which its unit has to work.</summary>
/// <param name="At">The condition.</param>
/// <param name="Verdict">The worst of its clutches and needs, or did not converge.</param>
/// <param name="LineKilopascals">Pressure at the pump; 0 where it did not converge.</param>
/// <param name="Clutches">Every clutch, in the order of the file.</param>
/// <param name="Needs">Every need that counts in the gear.</param>
public sealed record ConditionReport(
    OperatingPoint At, Verdict Verdict, double LineKilopascals, ImmutableArray<ClutchAtCondition> Clutches, ImmutableArray<NeedReport> Needs)
{
    /// <summary>Line pressure of the nearest matched set in the same gear at the same condition; null without one, or where it did not converge.</summary>
    public double? MatchedLineKilopascals { get; init; }

    /// <summary>
    /// Whether the nearest matched set is as bad in this gear at this condition: the fault is the unit's own, and not that of the parts that were mixed.
    /// </summary>
    public bool SharedByMatched { get; init; }

    /// <summary>Line pressure against the matched set's.</summary>
    /// <param name="thresholds">By how much it may differ.</param>
    public LineState LineOff(Thresholds thresholds) =>
        Verdict == Verdict.DidNotConverge || MatchedLineKilopascals is not { } matched ? LineState.AsMatched
        : LineKilopascals < (1 - thresholds.LineOff) * matched ? LineState.Low
        : LineKilopascals > (1 + thresholds.LineOff) * matched ? LineState.High
        : LineState.AsMatched;

    /// <summary>Where there is no answer: the passage with the largest imbalance; else null.</summary>
    public string? DidNotConvergeAt { get; init; }
}

/// <summary>Line pressure against that of the matched set at the same condition.</summary>
public enum LineState
{
    /// <summary>As it should be, or nothing to hold it against.</summary>
    AsMatched,

    /// <summary>Too low.</summary>
    Low,

    /// <summary>Too high.</summary>
    High,
}

/// <summary>A clutch in a gear at a condition.</summary>
/// <param name="Clutch">Its name.</param>
/// <param name="Charted">Whether the chart applies it.</param>
/// <param name="Kilopascals">Net pressure: apply less what release oil takes off; 0 or more.</param>
/// <param name="MatchedKilopascals">What the nearest matched set gives it, by which it is judged; null without one.</param>
/// <param name="ClampNewtons">What presses on its plates.</param>
/// <param name="CapacityNewtonMetres">Torque that it can carry.</param>
/// <param name="NeedNewtonMetres">Torque that it has to carry; 0 where others hold the gear without it, or without a gear train.</param>
/// <param name="Strength">Applied, weak or released.</param>
/// <param name="Verdict">Strength against chart.</param>
public sealed record ClutchAtCondition(
    string Clutch, bool Charted, double Kilopascals, double? MatchedKilopascals, double ClampNewtons, double CapacityNewtonMetres,
    double NeedNewtonMetres, ClutchState Strength, Verdict Verdict);

/// <summary>What a passage has of what the unit needs there.</summary>
/// <param name="Need">The need.</param>
/// <param name="Verdict">As charted, starved or over-pressure.</param>
/// <param name="Kilopascals">Its pressure.</param>
/// <param name="LitresPerMinute">What flows through it.</param>
/// <param name="MatchedKilopascals">The matched set's pressure there; null without one.</param>
/// <param name="MatchedLitresPerMinute">The matched set's flow through it; null without one.</param>
public sealed record NeedReport(
    UnitNeed Need, Verdict Verdict, double Kilopascals, double LitresPerMinute, double? MatchedKilopascals, double? MatchedLitresPerMinute)
{
    /// <summary>How much of what it should have it has, by what it has least of.</summary>
    internal double Share => Math.Min(
        LitresPerMinute / Math.Max(1e-9, Need.Given?.Flow?.LitresPerMinute ?? MatchedLitresPerMinute ?? LitresPerMinute),
        Kilopascals / Math.Max(1e-9, Need.Given?.Least?.Kilopascals ?? MatchedKilopascals ?? Kilopascals));
}
