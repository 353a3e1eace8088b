using Circuits.Findings;
using Circuits.Judging.Conditions;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>line-low</c>.</summary>
internal sealed class LineLow : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "line-low", Severity.Warning,
        Meaning: "Line pressure is more than a tenth below that of the nearest matched set in the same gear at the same condition (thresholds: line sets how much).",
        OnTheRoad: "Engagements and changes of gear are soft and late, and clutches slip under load and burn.",
        Example: "3: line has 390 kPa at idle-hot, 520 kPa with the matched set.",
        Mend: "Look for a leak, a worn pump, a regulator that spills too early: a weak or wrong spring, a regulator stuck open.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (gear.LineOff(LineState.Low) is { } told) found.Add(Rule.At(gear.LinePlace, told));
    }
}
