using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>no-such-hole</c>.</summary>
internal static class NoSuchHole
{
    public static Rule Rule { get; } = new(
        "no-such-hole", Severity.Error,
        Meaning: "No hole at that location gives the time that was wanted.",
        OnTheRoad: "Drilling there would spoil a plate and not mend the shift.",
        Example: "1-2: no hole at plate@13 from 0.35 to 10 mm lets high touch after 20 ms; they give 94 to 2100 ms.",
        Mend: "See which opening controls the clutch (circuits gears FILE --gear, narrowest openings), or look at its pressure, its spring or the command's profile.");
}
