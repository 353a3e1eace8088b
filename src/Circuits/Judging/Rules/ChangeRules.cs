using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>Rules about changes that someone asks for: a study that cannot carry them out says so by these.</summary>
public static class ChangeRules
{
    /// <summary>A change names what these parts do not have.</summary>
    public static Rule UnknownTarget { get; } = new(
        "unknown-target", Severity.Error,
        Meaning: "A change names a location, ball, valve, solenoid, passage, part or revision that these parts do not have.",
        OnTheRoad: "The change would be carried out on something else, or on nothing.",
        Example: "--drop tow-way",
        Mend: "Correct the name, or fit the revision that has it. Locations are written plate@21, front:21 or 21; the rest part.name.");

    /// <summary>A change may mean several things.</summary>
    public static Rule AmbiguousTarget { get; } = new(
        "ambiguous-target", Severity.Error,
        Meaning: "Several things have the name that a change uses, so it is not clear which is meant.",
        OnTheRoad: "The wrong hole would be drilled.",
        Example: "--hole 21=2.0mm     # two sheets have a location 21",
        Mend: "Write one of the names that the message lists.");

    /// <summary>Two changes contradict each other.</summary>
    public static Rule ContradictoryChanges { get; } = new(
        "contradictory-changes", Severity.Error,
        Meaning: "Two changes are about the same thing: one location plugged and drilled, one ball left out and replaced, one valve stuck twice.",
        OnTheRoad: "Only one of them can be carried out.",
        Example: "--plug 22 --hole 22=2.0mm",
        Mend: "Leave one of them out.");

    /// <summary>A change cannot be carried out on that thing.</summary>
    public static Rule ImpossibleChange { get; } = new(
        "impossible-change", Severity.Error,
        Meaning: "What a change names is there, but the change cannot be carried out on it: a round hole where a slot is, a ball in a pocket that holds one.",
        OnTheRoad: "On the bench it would not work either.",
        Example: "--hole 6=2.0mm     # plate@6-7 is a slot",
        Mend: "Do what the help line says.");

    /// <summary>All of them.</summary>
    internal static ImmutableArray<Rule> All { get; } = [UnknownTarget, AmbiguousTarget, ContradictoryChanges, ImpossibleChange];
}
