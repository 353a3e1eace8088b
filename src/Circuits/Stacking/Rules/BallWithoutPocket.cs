using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>ball-without-pocket</c>.</summary>
public static class BallWithoutPocket
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "ball-without-pocket", Severity.Warning,
        Meaning: "A ball is to lie in a passage that this assembly does not have.",
        OnTheRoad: "The ball has nowhere to go: left over at assembly, or put where it does harm.",
        Example: "Ball set 2 has a ball for body.either; body 1 has no passage of that name.",
        Mend: "Leave the ball out, or fit the casting that has its pocket. Never put a left-over ball into a pocket that looks free.");
}
