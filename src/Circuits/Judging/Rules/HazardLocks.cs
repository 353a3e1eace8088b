using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>hazard-locks</c>.</summary>
internal static class HazardLocks
{
    public static Rule Rule { get; } = new(
        "hazard-locks", Severity.Warning,
        Meaning: "This one fault makes a forward gear tie up.",
        OnTheRoad: "The driven wheels may lock at road speed without warning, or the vehicle brakes itself hard.",
        Example: "valve body.shift stuck moved: tie-up in 3; must not be driven.",
        Mend: "Must not be driven with it: tow it. Look at this item first when the unit is apart, and have the gauge reading that shows it taken with the wheels off the ground.");
}
