using Circuits.Findings;

namespace Circuits.Driveline;

/// <summary>A gear train in which nothing can bring input and output to a ratio of its own.</summary>
public static class GearsetCannotDrive
{
    /// <summary>The rule.</summary>
    public static Rule Rule { get; } = new(
        "gearset-cannot-drive", Severity.Error,
        "Even if every clutch held, nothing leads from the input to the output; or input and output are one shaft, so "
        + "that no clutch matters.",
        "The description is wrong. Every gear would be reported as no drive, or as drive at one to one, whatever the "
        + "hydraulics do.",
        "planetaries: {front: {sun: 34, ring: 74}}\n"
        + "output: front.carrier\n"
        + "clutches: {brake: [front.ring, case]}    # and no clutch that names `input`",
        "Add the clutch or the joint that is missing between the input and a planetary, or between a planetary and the "
        + "output; or name another member as input or output.");
}
