using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about keys and what stands behind them.</summary>
internal static class ShapeRules
{
    public static Rule UnknownKey { get; } = new(
        "unknown-key", Severity.Error,
        "The circuit language has no such key in this place.",
        "A misspelt key is a value that is never used: the ball you described would have no diameter.",
        "balls: {two-way: {in: either, seats: [11, 12], diametre: 6.35 mm}}",
        "Correct the spelling; move the key to the element it belongs to; or delete it.");

    public static Rule MissingKey { get; } = new(
        "missing-key", Severity.Error,
        "Something is left out without which the element means nothing.",
        "The element could not be built, so nothing can be said about the unit.",
        "regulators: {direct: {from: line, spring: 20 kPa}}     # out is missing",
        "Add the key.");

    public static Rule DuplicateKey { get; } = new(
        "duplicate-key", Severity.Error,
        "The same key stands twice in one mapping, so it is not clear which value holds.",
        "One of the two would be dropped silently; most often it is a second passage under a name already taken.",
        "passages: {lube: {front: [5]}, lube: {front: [6]}}",
        "Delete or rename one of them.");

    public static Rule WrongType { get; } = new(
        "wrong-type", Severity.Error,
        "A list stands where a single value belongs, or a word where a list belongs, or the like.",
        "The value could not be read.",
        "apply: direct      # a list is needed: [direct]",
        "Write it in the form that the message names.");

    public static Rule EmptyValue { get; } = new(
        "empty-value", Severity.Error,
        "A key has no value. null removes what a based-on revision inherits; elsewhere it means nothing.",
        "It is not clear whether the value is unknown or was forgotten.",
        "clutches: {direct: {at: cover.direct, area: }}",
        "Give the value, or delete the key. An empty list is [], a passage that opens on no joint is {}.");

    public static Rule UnknownWord { get; } = new(
        "unknown-word", Severity.Error,
        "The value must be one of a few fixed words, and is none of them.",
        "The value could not be read.",
        "kind: castin",
        "Use one of the words that the message lists.");

    public static Rule MisplacedKey { get; } = new(
        "misplaced-key", Severity.Error,
        "The key is right, but not here: openings belong to sheets, passages to everything but sheets, elements into a revision.",
        "The element would belong to a part that cannot have it.",
        "body: {kind: casting, openings: [{at: 1, hole: 6 mm}]}",
        "Move it to the part or the revision that has it in the metal.");
}
