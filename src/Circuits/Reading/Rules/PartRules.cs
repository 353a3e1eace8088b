using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about parts, their revisions, joints and locations.</summary>
internal static class PartRules
{
    public static Rule BasedOnCircle { get; } = new(
        "based-on-circle", Severity.Error,
        "Revisions are based on one another in a circle, so none of them is written in full.",
        "There is nothing to begin from.",
        "revisions: {1: {based-on: 2}, 2: {based-on: 1}}",
        "Write one of them out in full, without based-on.");

    public static Rule NothingToRemove { get; } = new(
        "nothing-to-remove", Severity.Error,
        "null removes something that the revision does not inherit.",
        "Most often the name or location is misspelt, so the thing that should go stays.",
        "2: {based-on: 1, balls: {tow-way: null}}",
        "Correct the name or location, or delete the line.");

    public static Rule UnusedLocation { get; } = new(
        "unused-location", Severity.Error,
        "An opening lies at a location where no revision of either casting of the joint has a passage.",
        "Such a hole meets solid metal in every assembly, so the number is most likely wrong, and the right location lacks its hole.",
        "openings: [{at: 70, hole: 2 mm}]     # 7 was meant",
        "Correct the location, or add it to a passage.");

    public static Rule UnknownLocation { get; } = new(
        "unknown-location", Severity.Error,
        "The joint lists its locations, and this one is not among them.",
        "Most often the number is wrong, so an opening and its passage miss each other.",
        "joints: {front: {locations: [1, 2, 3]}} and passages: {line: {front: [1, 4]}}",
        "Correct the number, or add the location to the joint.");

    public static Rule LocationTakenTwice { get; } = new(
        "location-taken-twice", Severity.Error,
        "Two passages of one casting revision open at the same location of a joint. They would be one cavity.",
        "Oil would cross from one to the other in every assembly.",
        "passages: {lube: {front: [5, 6]}, cooler: {front: [6, 7]}}",
        "Take the location out of one of them. A revision that divides a passage must state both halves.");

    public static Rule SeatOutsidePocket { get; } = new(
        "seat-outside-pocket", Severity.Error,
        "A ball's seat is at a location where its pocket does not open, in any revision.",
        "The ball cannot reach that hole, so it would never close it.",
        "balls: {two-way: {in: either, seats: [11, 99]}}",
        "Correct the seat's location, or the pocket's.");

    public static Rule NotInJoint { get; } = new(
        "not-in-joint", Severity.Error,
        "A passage opens on a joint in which its part does not lie.",
        "No sheet and no casting meets it there.",
        "joints: {rear: {between: [cover, case]}} and body: {passages: {line: {rear: [1]}}}",
        "Name a joint of this part, or add the part to the joint.");

    public static Rule WrongPartKind { get; } = new(
        "wrong-part-kind", Severity.Error,
        "A joint lies between two castings and holds sheets; another kind of part is named there.",
        "The stack could not be laid.",
        "joints: {front: {between: [body, plate]}}",
        "Name a part of the right kind, or correct the part's kind.");

    public static Rule SheetWithoutJoint { get; } = new(
        "sheet-without-joint", Severity.Error,
        "A sheet lies in no joint.",
        "Its holes would meter nothing.",
        "parts: {plate: {kind: sheet}} and joints: {front: {between: [body, cover]}}",
        "Add it to the sheets of its joint, in order.");

    public static Rule SheetInTwoJoints { get; } = new(
        "sheet-in-two-joints", Severity.Error,
        "A sheet lies in two joints. Its locations are numbered for one.",
        "Its holes would be taken for holes of the other joint.",
        "joints: {front: {sheets: [plate]}, rear: {sheets: [plate]}}",
        "Describe a second sheet, even if it is the same piece.");

    public static Rule HoleReachesNext { get; } = new(
        "hole-reaches-next", Severity.Error,
        "A round hole of a sheet is so wide that it reaches the middle of another location, or runs into another hole of the same sheet.",
        "The two passages would be joined in the real part, and are not in the file.",
        "locations: {5: [10, 10], 6: [14, 10]} and openings: [{at: 5, hole: 9 mm}]",
        "Check the size and the coordinates; if the part is so, write one slot that spans both locations: {at: [5, 6], slot: 9 x 13 mm}.");
}
