using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>over-pressure</c>.</summary>
internal sealed class TooMuchPressure : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "over-pressure", Severity.Error,
        Meaning: "A place that the unit feeds (converter, cooler, lubrication, or what the file names under needs) gets more pressure than it may have: more than the file allows, or more than one and a half times what the matched set gives it there.",
        OnTheRoad: "A converter balloons and its bushing seizes, a cooler or a line bursts, seals give way.",
        Example: "2: converter has 1505 kPa at road-hot, the matched set gives it 513 kPa.",
        Mend: "Look at what limits it: a limit valve that sticks or lacks its drain, a plugged cooler way, a hole that was opened.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var group in gear.Report.Conditions.SelectMany(condition => condition.Needs.Where(need => need.Verdict == Verdict.OverPressure).Select(need => (condition.At, Need: need))).GroupBy(pair => pair.Need.Need))
        {
            // Where it is worst; the other conditions are named.
            var (at, need) = group.MaxBy(pair => pair.Need.Kilopascals);
            var also = group.Where(pair => pair.At != at).Select(pair => pair.At.Name).ToList();
            var conditions = also.Count > 0 ? Phrase.Of($"{at} (and at {also})") : Phrase.Of($"{at}");
            var most = need.Need.Given?.Most is { } given ? Phrase.Of($"it may have {given}") : Phrase.Of($"the matched set gives it {new Pressure(need.MatchedKilopascals!.Value)}");
            found.Add(Rule.At(need.Need.Place, $"{need.Need.Name} has {new Pressure(need.Kilopascals)}{GearMention.In(gear.Gear)} at {conditions}, {most}"));
        }
    }
}
