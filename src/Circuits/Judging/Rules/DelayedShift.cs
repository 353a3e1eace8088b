using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>delayed-shift</c>.</summary>
internal static class DelayedShift
{
    public static Rule Rule { get; } = new(
        "delayed-shift", Severity.Warning,
        Meaning: "A timed shift or engagement takes longer than it should.",
        OnTheRoad: "The lever is in a range, or the next gear due, and nothing happens for a while.",
        Example: "N-R: 1480 ms until the gear holds.",
        Mend: "Look for what is narrow on the way of the clutch that comes last, for a leak that starves it, and whether the pump has oil left at idle.");
}
