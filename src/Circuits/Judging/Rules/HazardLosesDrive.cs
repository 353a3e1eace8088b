using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>hazard-loses-drive</c>.</summary>
internal static class HazardLosesDrive
{
    public static Rule Rule { get; } = new(
        "hazard-loses-drive", Severity.Warning,
        Meaning: "This one fault takes the drive away, or lets it come and go, or ties the gear train up at standstill.",
        OnTheRoad: "The vehicle stops in traffic, or does not come back from where it stands.",
        Example: "plate@3 plugged: no drive in 1; must not be driven.",
        Mend: "Must not be driven with it. The row tells the gauge reading that shows it before a road test.");
}
