using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>starved</c>.</summary>
internal sealed class Starved : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "starved", Severity.Error,
        Meaning: "A place that the unit needs oil at (lubrication, cooler, converter, a balance chamber, or what the file names under needs) gets less than it needs in this gear: less pressure or flow than the file asks for, or less than half of what the matched set gives it there.",
        OnTheRoad: "Bushings and planetaries run dry and seize, the converter loses its oil and slips, the oil boils. Often nothing is felt until the unit is destroyed.",
        Example: "2: lube gets 0.1 of 1.5 L/min at idle-hot.",
        Mend: "See what feeds it: trace shows the way of its oil. A plugged hole, a blank, a wrong gasket, or a leak that takes the oil before it.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var group in gear.Report.Conditions.SelectMany(condition => condition.Needs.Where(need => need.Verdict == Verdict.Starved).Select(need => (condition.At, Need: need))).GroupBy(pair => pair.Need.Need))
        {
            // Where it is worst; the other conditions are named.
            var (at, need) = group.MinBy(pair => pair.Need.Share);
            var also = group.Where(pair => pair.At != at).Select(pair => pair.At.Name).ToList();
            var conditions = also.Count > 0 ? Phrase.Of($"{at} (and at {also})") : Phrase.Of($"{at}");
            found.Add(Rule.At(
                need.Need.Place,
                $"{need.Need.Name} is starved{GearMention.In(gear.Gear)} at {conditions}: {new Flow(need.LitresPerMinute)} at {new Pressure(need.Kilopascals)}{Wanted(need)}"));
        }
    }

    private static Phrase Wanted(Conditions.NeedReport need) =>
        need.Need.Given is { } given
            ? given.Flow is { } flow && need.LitresPerMinute < flow.LitresPerMinute ? Phrase.Of($", it needs {flow}") : Phrase.Of($", it needs {given.Least!.Value}")
            : Phrase.Of($", the matched set gives it {new Flow(need.MatchedLitresPerMinute!.Value)} at {new Pressure(need.MatchedKilopascals!.Value)}");
}
