using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about names.</summary>
internal static class NameRules
{
    public static Rule UnknownName { get; } = new(
        "unknown-name", Severity.Error,
        "A passage, part, revision, clutch, gear, solenoid or joint is named that this file does not have.",
        "The element would hang in the air: a valve joined to a passage that nobody can find on the casting.",
        "restrictions: [{between: [line, convertor], hole: 2.0 mm}]",
        "Correct the name, or add what it names. Another part's passage is written part.passage.");

    public static Rule AmbiguousName { get; } = new(
        "ambiguous-name", Severity.Error,
        "Several things have that name, so it is not clear which is meant.",
        "The wrong one would be taken in some assemblies.",
        "taps: {line: line}     # both castings have a passage line",
        "Write part.name; for a seat, {joint: front, at: 11}.");

    public static Rule BadName { get; } = new(
        "bad-name", Severity.Error,
        "The name is a word that means something already (exhaust, pump, case, ...), is empty or longer than 64 characters, or has a character that reports and commands use (space . @ = , ~).",
        "Commands and reports could not tell it apart.",
        "passages: {\"line 2\": {front: [3]}}",
        "Choose another name: line-2.");

    public static Rule NamedTwice { get; } = new(
        "named-twice", Severity.Error,
        "The same thing is named twice where each may stand once: a clutch in apply, a passage in a port, a seat of a ball; or two elements of a revision share a name.",
        "Most often the second one should be another.",
        "apply: [direct, direct]",
        "Correct or delete the second one. A valve that becomes a regulator in a later revision: remove the valve with null.");

    public static Rule ExhaustMisplaced { get; } = new(
        "exhaust-misplaced", Severity.Error,
        "The sump (exhaust) is named where only a passage under pressure makes sense.",
        "Oil of the sump moves nothing, and the sump needs no supply.",
        "clutches: {direct: {at: exhaust}}",
        "Name the passage that is meant.");
}
