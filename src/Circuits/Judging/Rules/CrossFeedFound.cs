using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>cross-feed</c>.</summary>
internal sealed class CrossFeedFound : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "cross-feed", Severity.Error,
        Meaning: "Oil of one circuit enters a passage of another, where in the matched set and this gear it does not. A note where it changes nothing that counts: it moves no valve or clutch, shifts the passage by a twentieth of line pressure at most, and takes a fiftieth of the pump's oil at most; or both circuits stand near line pressure anyway.",
        OnTheRoad: "Foreign oil moves valves that should rest, fills clutches that should be empty, or drains a feed.",
        Example: "R: body.line enters body.signal-2 through plate@23 of plate 1, and moves valve body.select.",
        Mend: "Compare the sheet with the casting at that location. An opening that is harmless over solid metal may be disastrous here.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var feed in gear.Report.CrossFeeds)
        {
            var moves = feed.Moves.IsEmpty ? Phrase.Empty : Phrase.Of($"; moves {Phrase.Join(", ", feed.Moves.Select(moved => moved.Phrase))}");
            var little = feed.IsHarmless ? Phrase.Of($"; too little to matter") : Phrase.Empty;
            found.Add(Rule.At(feed.Place, $"{feed.From} enters {feed.Into} through {feed.Through}{GearMention.In(gear.Gear)}{moves}{little}") with
            {
                Severity = feed.IsHarmless ? Severity.Note : Rule.Severity,
            });
        }
    }
}
