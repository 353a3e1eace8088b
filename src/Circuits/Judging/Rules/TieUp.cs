using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>tie-up</c>.</summary>
internal sealed class TieUp : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "tie-up", Severity.Error,
        Meaning: "The clutches that hold lock the gear train.",
        OnTheRoad: "The driven wheels may lock at speed, the engine stalls, or one clutch burns while it slips against the others.",
        Example: "4: low is still on together with direct and overdrive.",
        Mend: "Do not drive. Find what feeds the clutch that should be off; its finding names the place.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (gear.Report is { Settled: true, Drive: { Mobility: 0 } drive })
            found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Before(gear.Gear)}{drive.Feel}") with { Tells = drive.Feel });
    }
}
