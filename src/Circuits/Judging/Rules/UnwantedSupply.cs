using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>unwanted-supply</c>.</summary>
internal sealed class UnwantedSupply : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "unwanted-supply", Severity.Error,
        Meaning: "A clutch that the chart does not apply in this gear is applied, or partly so.",
        OnTheRoad: "One element too many: tie-up, drag, a burnt clutch, or a vehicle that creeps in neutral.",
        Example: "2: low-reverse has 480 kPa through plate@23, which the matched set has blanked.",
        Mend: "Follow the oil back with trace. Do not drive to see what happens: a tie-up at speed can lock the wheels.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (!gear.Report.Settled) return;
        foreach (var clutch in gear.Report.Clutches)
        {
            if (clutch.Verdict != Model.Verdict.Unwanted) continue;
            var element = gear.Element(clutch.Clutch).Clutch;
            var entry = gear.Report.CrossFeeds.FirstOrDefault(feed => feed.Moves.Contains(new Moved.Clutch(clutch.Clutch)));
            var how = clutch.State == ClutchState.Trapped ? Phrase.Of($" by trapped oil") : entry is null ? Phrase.Empty : Phrase.Of($" through {entry.Through}");
            found.Add(Rule.At(
                entry?.Place ?? element.Place,
                $"{clutch.Clutch} is on{GearMention.In(gear.Gear)}{gear.AtCondition}{how}: {clutch.Pressure}, though not charted{gear.Shared}") with
            {
                Related = [new RelatedPlace(element.Place, $"the clutch")],
            });
        }
    }
}
