using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>no-drive</c>.</summary>
internal sealed class NoDrive : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "no-drive", Severity.Error,
        Meaning: "With the clutches that hold, the gear train has no fixed ratio in a gear that should drive.",
        OnTheRoad: "The engine flares or revs freely; the vehicle does not move, or stops pulling.",
        Example: "R: direct is not applied, so the carrier turns freely.",
        Mend: "Mend what keeps the missing clutch off; its finding names the place.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        // With charted clutches that are merely weak it slips, which weak-supply says.
        if (gear.Report is { Settled: true, Verdict: Model.Verdict.Lost, Drive: { Mobility: > 1, Expected: not null } drive })
            found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Before(gear.Gear)}{drive.Feel}") with { Tells = drive.Feel });
    }
}
