using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>lost-supply</c>.</summary>
internal sealed class LostSupply : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "lost-supply", Severity.Error,
        Meaning: "A clutch that the chart applies in this gear has no pressure that could hold it.",
        OnTheRoad: "The gear is missing: no reverse, or the engine flares when the gear is asked for. A clutch left half filled burns.",
        Example: "R: direct has 0 kPa; its oil stops at plate@22, which plate 1 has blanked.",
        Mend: "Look at the place named: trace tells the whole way. Fit the part that opens the way, or ask for a remedy.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (!gear.Report.Settled) return;
        foreach (var clutch in gear.Report.Clutches)
        {
            if (clutch.Verdict != Model.Verdict.Lost) continue;
            var element = gear.Element(clutch.Clutch).Clutch;
            var low = gear.LineLow;
            var where = clutch.StoppedAt is { } stop ? Phrase.Of($": its oil stops at {stop.Element} ({stop.Reason}){(low is null ? null : Phrase.Of($"; {low}"))}")
                : low is not null ? Phrase.Of($": {low}")
                : Phrase.Of($": no way from supply is known");
            found.Add(Rule.At(clutch.StoppedAt?.Place ?? element.Place, $"{clutch.Clutch} is not applied{GearMention.In(gear.Gear)}{gear.AtCondition}{where}{gear.Shared}") with
            {
                Related = [new RelatedPlace(element.Place, $"the clutch")],
            });
        }
    }
}
