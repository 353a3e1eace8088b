using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>depends-on-history</c>.</summary>
internal sealed class DependsOnHistory : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "depends-on-history", Severity.Warning,
        Meaning: "Where this gear ends depends on the gear it was reached from.",
        OnTheRoad: "The same lever and the same signals give one behaviour on the way up and another on the way down.",
        Example: "2 from 3: valve shift-2-3 stays moved, because its own outlet helps to hold it.",
        Mend: "Hysteresis may be meant: then say with after: which gear this state is reached from. Else look for trapped oil and for feedback that should not be there.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var history in gear.Report.Histories)
            found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Subject(gear.Gear)}depends on history: {history}"));
    }
}
