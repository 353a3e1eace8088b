using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>wrong-ratio</c>.</summary>
internal sealed class WrongRatio : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "wrong-ratio", Severity.Error,
        Meaning: "The gear train drives, but not at the ratio of this gear.",
        OnTheRoad: "The vehicle starts in the wrong gear, hangs in one, or moves the wrong way.",
        Example: "2: wrong gear, 3 instead of 2, because valve shift-2-3 is moved.",
        Mend: "Mend what applies or releases the wrong clutch; its finding names the place. If no clutch is wrong, correct the chart, the gear train or the ratio in the file.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (gear.Report is not { Settled: true, Drive: { } drive } || drive.Mobility != 1) return;
        if (!DriveJudge.Same(drive.Ratio, drive.Expected))
        {
            found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Before(gear.Gear)}{drive.Feel}") with { Tells = drive.Feel });
        }
        else if (gear.Solved.Gear.Ratio is { } given && drive.Ratio is { } ratio && !DriveJudge.Same(ratio, given))
        {
            found.Add(Rule.At(
                gear.Solved.Gear.Place,
                $"{GearMention.Before(gear.Gear)}the file gives ratio {new Ratio(given)}, the gear train has {new Ratio(ratio)}"));
        }
    }
}
