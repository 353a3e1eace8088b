using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>shift-flare</c>.</summary>
internal static class ShiftFlare
{
    public static Rule Rule { get; } = new(
        "shift-flare", Severity.Error,
        Meaning: "In a timed shift the clutch that goes off lets go before the other can take the torque.",
        OnTheRoad: "The engine speeds up between the gears.",
        Example: "2-3: for 140 ms less than 95 % of the torque is held.",
        Mend: "Compare fill and release with the matched set: a hole too small on the way in, or too large on the way out, or one that a ball no longer closes.");
}
