using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>not-decided</c>.</summary>
internal static class NotDecided
{
    public static Rule Rule { get; } = new(
        "not-decided", Severity.Warning,
        Meaning: "A change of gear is bad with a size that was assumed because the file does not give it, and good with half of that, or double.",
        OnTheRoad: "The shift may be good or bad: the file does not say enough to tell.",
        Example: "1-2: for 291 ms less than 95 % of the torque is held; this hangs on the fill volume of clutch high, assumed 55 mL: with half it is good.",
        Mend: "Measure the size that is named and write it into the file.");
}
