using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>fill-contradicted</c>.</summary>
public static class FillContradicted
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "fill-contradicted", Severity.Error,
        Meaning: "A clutch is said to fill with less oil than its piston sweeps until the plates touch: its area times its stroke.",
        OnTheRoad: "One of the sizes is wrong, and with it every time in which the clutch fills or empties.",
        Example: "Clutch high takes 14 mL to fill, while 8000 mm2 over 2.0 mm sweep 16.0 mL.",
        Mend: "Measure the piston and its stroke again, or the oil that the clutch takes; the fill may be more than what is swept, never less.");
}
