using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>hazard-wrong-direction</c>.</summary>
internal static class HazardWrongDirection
{
    public static Rule Rule { get; } = new(
        "hazard-wrong-direction", Severity.Warning,
        Meaning: "This one fault makes the vehicle drive the other way, or fall into a much lower gear than the one asked for.",
        OnTheRoad: "It moves against the lever, or wheels and engine are forced together at road speed.",
        Example: "solenoid pack.start of the other polarity: wrong direction in 4; must not be driven.",
        Mend: "Must not be driven with it. Prove the item on the bench, and the gear at standstill with the wheels off the ground.");
}
