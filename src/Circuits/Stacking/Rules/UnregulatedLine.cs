using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>unregulated-line</c>.</summary>
public static class UnregulatedLine
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "unregulated-line", Severity.Error,
        Meaning: "No spilling regulator is reached from the passage that the pump feeds.",
        OnTheRoad: "Nothing limits line pressure but the pump itself. Cases crack, seals blow, every shift is harsh.",
        Example: "The only opening between pump.line and the regulator is blanked.",
        Mend: "Find what stops the oil between the pump and the line regulator. Do not run the engine before it is found.");
}
