using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>seat-will-not-seal</c>.</summary>
public static class SeatWillNotSeal
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "seat-will-not-seal", Severity.Error,
        Meaning: "A ball lies over an opening that it cannot close: a slot, or an opening that is not round.",
        OnTheRoad: "What the ball should keep apart stays joined. Supply drains through the idle branch, or a clutch that should fill through a hole fills at once.",
        Example: "Ball two-way of body 2 lies over plate@11, which plate 1 has as a slot of 4 x 14 mm.",
        Mend: "Fit the sheet revision that has a round hole there, smaller than the ball. Light through the seat with the ball in place shows it.");
}
