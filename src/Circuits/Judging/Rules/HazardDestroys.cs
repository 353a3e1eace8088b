using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>hazard-destroys</c>.</summary>
internal static class HazardDestroys
{
    public static Rule Rule { get; } = new(
        "hazard-destroys", Severity.Warning,
        Meaning: "This one fault makes a part of the unit run dry, or puts more pressure on it than it is made for.",
        OnTheRoad: "Bushings and planetaries seize, a converter balloons, a cooler line bursts. Mostly nothing is felt before.",
        Example: "plate@40 plugged: lube gets no oil; must not be driven.",
        Mend: "Must not be run with it, not even on the stand. Look at this item whenever the unit is apart: nobody will complain in time.");
}
