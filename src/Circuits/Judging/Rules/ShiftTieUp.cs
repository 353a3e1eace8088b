using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>shift-tie-up</c>.</summary>
internal static class ShiftTieUp
{
    public static Rule Rule { get; } = new(
        "shift-tie-up", Severity.Error,
        Meaning: "In a timed shift a clutch still holds while another one already holds against it.",
        OnTheRoad: "The vehicle brakes itself in the shift, it bumps or shudders; plates burn.",
        Example: "3-4: for 210 ms clutches work against each other.",
        Mend: "Do not drive to see. Compare release with the matched set: a hole too small on the way out, a ball in the wrong place, an exhaust that is restricted.");
}
