using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about matched sets, gears and the gear train.</summary>
internal static class GearRules
{
    public static Rule IncompleteMatchedSet { get; } = new(
        "incomplete-matched-set", Severity.Error,
        "A matched set leaves out a part that has several revisions.",
        "It would not be known which of them the maker released with the others.",
        "matched: {late: {body: 2}}     # plate has revisions 1 and 2",
        "Name the part's revision.");

    public static Rule GearWithoutLever { get; } = new(
        "gear-without-lever", Severity.Error,
        "The unit has a manual valve, and a gear does not say where its lever stands.",
        "Without it the gear's oil comes from nowhere.",
        "gears: {R: {apply: [low-reverse]}}",
        "Add lever: R.");

    public static Rule GearOrderCircle { get; } = new(
        "gear-order-circle", Severity.Error,
        "Gears come after one another in a circle, so there is none to begin from.",
        "A state that depends on its history has no history.",
        "gears: {2: {after: 3}, 3: {after: 2}}",
        "Leave after out of one of them: that one starts from rest.");

    public static Rule GearsetStructure { get; } = new(
        "gearset-structure", Severity.Error,
        "The gear train cannot be built so: a ring no larger than its sun, a member tied to itself, the case as input.",
        "No ratio could be worked out, and no complaint foretold.",
        "planetaries: {front: {sun: 74, ring: 34}}",
        "Correct the teeth, or the members named.");

    public static Rule CurrentWithoutTable { get; } = new(
        "current-without-table", Severity.Error,
        "A solenoid is commanded by a current, and no revision has a table that turns current into pressure.",
        "The pressure that it holds is not known.",
        "commands: {two: 0.4 A}",
        "Command a pressure, or give the solenoid a table: [[0 A, 0 kPa], [1 A, 600 kPa]].");
}
