using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies;

/// <summary>What an edit of a unit's file did to its verdicts.</summary>
/// <param name="Since">What the state before the edit is called.</param>
/// <param name="VerdictsChanged">How many verdicts differ; null when there is nothing to compare with.</param>
/// <param name="Findings">A finding for each, or one that says why there is nothing to compare with.</param>
public sealed record EditReport(string Since, int? VerdictsChanged, ImmutableArray<Finding> Findings)
{
    /// <summary>An edit whose former state was checked too.</summary>
    /// <param name="since">What the state before the edit is called.</param>
    /// <param name="findings">A finding for each verdict that differs.</param>
    public static EditReport Of(string since, ImmutableArray<Finding> findings) => new(since, findings.Length, findings);

    /// <summary>An edit whose former state cannot be checked.</summary>
    /// <param name="since">What the state before the edit is called.</param>
    /// <param name="unit">The unit as it is now.</param>
    /// <param name="fault">Why.</param>
    public static EditReport NotCompared(string since, Unit unit, Finding fault) =>
        new(since, null, [VerdictChanged.NotCompared.At(unit.Place, $"not compared with {since}: {fault.Message}")]);
}
