using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>never-holds</c>.</summary>
internal static class NeverHolds
{
    public static Rule Rule { get; } = new(
        "never-holds", Severity.Error,
        Meaning: "In a timed shift a clutch of the gear that is entered does not come to carry the torque that it must.",
        OnTheRoad: "The engine runs up and the gear slips or does not come; the clutch burns.",
        Example: "2-3: direct can carry 96 of 180 Nm.",
        Mend: "See what circuits gears says of that gear. If it engages there, look at the clutch's pressure and size, and at the commands of the shift.");
}
