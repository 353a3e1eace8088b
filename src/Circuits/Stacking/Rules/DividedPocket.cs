using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>divided-pocket</c>.</summary>
public static class DividedPocket
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "divided-pocket", Severity.Warning,
        Meaning: "A ball is to close a seat that, in this assembly, lies outside its pocket: a wall divides the pocket, or the pocket is shorter.",
        OnTheRoad: "The ball works its remaining seats only. The other seat is an open hole.",
        Example: "Ball two-way closes 11 and 12; in body 2 a wall leaves 12 outside the pocket.",
        Mend: "Fit the casting and the ball set of one level. Lay the sheet on the casting and look at both seats.");
}
