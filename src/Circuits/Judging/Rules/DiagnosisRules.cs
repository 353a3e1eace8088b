using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>Rules about what a diagnosis comes to.</summary>
public static class DiagnosisRules
{
    /// <summary>A fault that explains everything that was observed.</summary>
    public static Rule PossibleFault { get; } = new(
        "possible-fault", Severity.Warning,
        Meaning: "This fault explains everything that was observed. Others may do so too: it is a candidate, not a verdict.",
        OnTheRoad: "What was complained of is what the unit does with this fault.",
        Example: "circuits diagnose unit.yaml --complaint \"no reverse\"",
        Mend: "Make the test that the diagnosis names next, and tell it what came of it.");

    /// <summary>Evidence that contradicts other evidence.</summary>
    public static Rule ContradictoryEvidence { get; } = new(
        "contradictory-evidence", Severity.Error,
        Meaning: "Two things that were told cannot both be true, whatever is wrong with the unit.",
        OnTheRoad: "A diagnosis from both would be a guess, so none is made.",
        Example: "--reading direct@3=310kPa --reading direct@3=40kPa",
        Mend: "Look or measure again, and leave out the one that is wrong. If it comes and goes, say so as a complaint.");

    /// <summary>Nothing that is known explains everything.</summary>
    public static Rule Unexplained { get; } = new(
        "unexplained", Severity.Error,
        Meaning: "No fault, and none of the pairs that were tried, explains everything that was observed.",
        OnTheRoad: "Either something was told wrongly, or more than two things are wrong, or the cause is not in the hydraulics.",
        Example: "circuits diagnose unit.yaml --complaint \"no reverse\" --reading direct@R=0kPa",
        Mend: "Check what the nearest candidates contradict; rule out the mechanical causes that the page names.");

    /// <summary>A weight for a fault that the unit cannot have.</summary>
    public static Rule UnknownFault { get; } = new(
        "unknown-fault", Severity.Error,
        Meaning: "The file gives a weight to a fault that no assembly of the unit can have: its kind is known, what it is about is not.",
        OnTheRoad: "The fault that was meant keeps the weight of its kind, and a diagnosis ranks it as if nothing had been said.",
        Example: "faults: {named: {\"hole-plugged plate@99\": 5}}",
        Mend: "Write the fault's code as diagnose and hazards print it.");

    /// <summary>All of them.</summary>
    internal static ImmutableArray<Rule> All { get; } = [PossibleFault, ContradictoryEvidence, Unexplained, UnknownFault];
}
