using Circuits.Findings;
using Circuits.Judging.Conditions;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>line-high</c>.</summary>
internal sealed class LineHigh : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "line-high", Severity.Warning,
        Meaning: "Line pressure is more than a tenth above that of the nearest matched set in the same gear at the same condition (thresholds: line sets how much).",
        OnTheRoad: "Every engagement and change of gear is harder, and castings, rings and pump carry more than they are made for.",
        Example: "3: line has 1800 kPa at idle-hot, 520 kPa with the matched set.",
        Mend: "Look at the line regulator and what boosts it: stuck shut, a wrong spring, a boost signal that should not be there.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (gear.LineOff(LineState.High) is { } told) found.Add(Rule.At(gear.LinePlace, told));
    }
}
