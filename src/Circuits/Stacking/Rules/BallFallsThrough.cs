using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>ball-falls-through</c>.</summary>
public static class BallFallsThrough
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "ball-falls-through", Severity.Error,
        Meaning: "A ball lies over a hole that is as large as the ball, or larger.",
        OnTheRoad: "The ball leaves its pocket. Its seat stays open for good, and the loose ball may jam a valve or a drain.",
        Example: "A 5.5 mm ball over plate@12, a hole of 6.0 mm.",
        Mend: "Check the ball against the service manual, and the hole with a pin gauge. Fit the right ball or the right sheet.");
}
