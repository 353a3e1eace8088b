using Circuits.Findings;

namespace Circuits.Driveline;

/// <summary>A clutch or joint between members that already turn together.</summary>
public static class CouplingWithoutEffect
{
    /// <summary>The rule.</summary>
    public static Rule Rule { get; } = new(
        "coupling-without-effect", Severity.Warning,
        "A clutch, a one-way clutch or a joint ties two members that turn together anyway. It changes nothing.",
        "If a name is mistyped here, the element that was meant is missing from the gear train, and gears that need it "
        + "are judged wrongly.",
        "joined: [[front.carrier, rear.ring]]\n"
        + "clutches: {direct: [front.carrier, rear.ring]}    # already joined",
        "Name the member that was meant, or take the line out.");
}
