using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>harsh-shift</c>.</summary>
internal static class HarshShift
{
    public static Rule Rule { get; } = new(
        "harsh-shift", Severity.Warning,
        Meaning: "In a timed shift a clutch goes from touching to holding its torque almost at once.",
        OnTheRoad: "A bang or a jerk as the gear comes in.",
        Example: "N-R: even takes its torque within 3 ms.",
        Mend: "Compare with the matched set: a metering hole that is missing or too large, a ball that no longer closes, an accumulator that takes up nothing.");
}
