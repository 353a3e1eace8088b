using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>hazard-creeps</c>.</summary>
internal static class HazardCreeps
{
    public static Rule Rule { get; } = new(
        "hazard-creeps", Severity.Warning,
        Meaning: "This one fault makes the vehicle move, or strain to move, in a gear where it should stand.",
        OnTheRoad: "It creeps in neutral, or lurches when the engine starts: someone may be crushed.",
        Example: "valve body.feed stuck moved: creeps forward in N; must not be driven.",
        Mend: "Must not be driven with it. Chock the wheels before the engine is started, and look at the item named.");
}
