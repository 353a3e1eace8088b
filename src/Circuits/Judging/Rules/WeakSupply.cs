using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>weak-supply</c>.</summary>
internal sealed class WeakSupply : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "weak-supply", Severity.Error,
        Meaning: "A clutch that the chart applies has pressure, but too little: between the weak and the applied threshold.",
        OnTheRoad: "The clutch slips under load and burns. The gear feels soft, or flares on a hill.",
        Example: "3: direct has 210 kPa of 620; oil drains away through the idle branch behind plate@12.",
        Mend: "Find where the oil goes: an open drain, a ball that no longer seals, a wrong hole. trace names the narrowest place.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (!gear.Report.Settled) return;
        foreach (var clutch in gear.Report.Clutches)
        {
            if (clutch.Verdict != Model.Verdict.Weak) continue;
            var element = gear.Element(clutch.Clutch).Clutch;
            var where = gear.LineLow is { } low ? Phrase.Of($"{(clutch.StoppedAt is { } lost ? Phrase.Of($"; most is lost at {lost.Element} ({lost.Reason})") : null)}; {low}")
                : clutch.StoppedAt is { } stop ? Phrase.Of($"; most is lost at {stop.Element} ({stop.Reason})") : Phrase.Empty;
            found.Add(Rule.At(
                clutch.StoppedAt?.Place ?? element.Place,
                $"{clutch.Clutch} is weak{GearMention.In(gear.Gear)}{gear.AtCondition}: {clutch.Pressure}{where}{gear.Shared}") with
            {
                Related = [new RelatedPlace(element.Place, $"the clutch")],
            });
        }
    }
}
