using Circuits.Findings;

namespace Circuits.Solving.Rules;

/// <summary>The rule <c>did-not-converge</c>.</summary>
internal static class DidNotConverge
{
    public static Rule Rule { get; } = new(
        "did-not-converge", Severity.Error,
        Meaning: "No pressures were found at which what flows into every passage flows out again. No number of that gear is an answer.",
        OnTheRoad: "Often nothing is steady there in the part either: a valve that hunts, a line pressure that swings.",
        Example: "3 at 90 degC, 700 rpm: did not converge at body.second; 12 % of the pump's oil is unaccounted for.",
        Mend: "See whether gears says never-settles in that gear. Else look at the passage named: a hole of a wild size, a regulator that feeds its own signal.");
}
