using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about sizes and numbers.</summary>
internal static class SizeRules
{
    public static Rule NotASize { get; } = new(
        "not-a-size", Severity.Error,
        "A size is not written as a number and a unit.",
        "The value could not be read.",
        "hole: two mm",
        "Write a number with a decimal point, then the unit: 2.1 mm. A number drill is \"#45\", with quotes.");

    public static Rule NumberWithoutUnit { get; } = new(
        "number-without-unit", Severity.Error,
        "A number stands alone where a size with its unit is needed. No unit is ever assumed.",
        "2.1 could be millimetres, or an inch size copied from another sheet: a factor of 25.",
        "hole: 2.1",
        "Add the unit: 2.1 mm.");

    public static Rule UnknownUnit { get; } = new(
        "unknown-unit", Severity.Error,
        "The unit is not one that circuit files know. Capitals matter: kPa, MPa, mL, Nm.",
        "The value could not be read.",
        "spring: 420 kpa",
        "Use one of the units that the message lists.");

    public static Rule WrongDimension { get; } = new(
        "wrong-dimension", Severity.Error,
        "The unit measures something else than what is needed here.",
        "Most often the value belongs to the key next to it: a spring force where a set pressure is meant.",
        "regulators: {main: {holds: line, spills-to: exhaust, spring: 40 N}}     # a pressure is needed",
        "Give a size of the kind named, or move the value to the key it belongs to.");

    public static Rule SizeOutOfRange { get; } = new(
        "size-out-of-range", Severity.Error,
        "The number is one that no part can have: negative, zero, infinite, or beyond what is made. Every quantity has its own range; the message gives it and says what ends there.",
        "A slip of the unit or the point, read on, would be taken for a part: a hole of no diameter is a plug, and a ball of 6.35 in would seal any hole and hide a mismatch.",
        "hole: 0 mm",
        "Correct the number, its unit or its decimal point. To close a hole, remove the opening (null in a later revision).");

    public static Rule UnlikelySize { get; } = new(
        "unlikely-size", Severity.Warning,
        "The number is possible, but far from what the trade knows for that quantity. The message gives what is usual.",
        "More often a slip of the unit or the point than a part: 0.083 mm for 0.083 in makes an orifice a twenty-fifth as wide, and a clutch that never fills.",
        "hole: 0.083 mm",
        "Measure again. Correct the number, its unit or its decimal point; if the part is so, leave it.");

    public static Rule UnknownDrill { get; } = new(
        "unknown-drill", Severity.Error,
        "There is no number drill of that number; they run from #1 (5.791 mm) to #80 (0.343 mm).",
        "The value could not be read.",
        "hole: \"#92\"",
        "Look the number up again, or give the diameter.");

    public static Rule TableOrder { get; } = new(
        "table-order", Severity.Error,
        "The points of a table are too few, or do not rise, or do not fit one another, so nothing can be read off between them.",
        "A pressure read off the wrong side of a point is a harsh shift or a slipping one.",
        "table: [[1 A, 0 kPa], [0 A, 600 kPa]]",
        "Put the points in rising order of their first number, each once, two or more.");
}
