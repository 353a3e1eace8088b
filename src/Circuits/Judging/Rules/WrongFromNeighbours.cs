using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>wrong-from-neighbours</c>.</summary>
internal sealed class WrongFromNeighbours : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "wrong-from-neighbours", Severity.Error,
        Meaning: "From rest the gear is as charted, and from each of the gears beside it it is not: no drive ever gets to it.",
        OnTheRoad: "A clutch that should let go stays on, or one that should come on does not, whichever way the gear is entered.",
        Example: "2 is as charted from rest alone: from 1, high is unwanted; from 3, high is unwanted.",
        Mend: "Look for a valve that its own outlet holds, and for trapped oil: depends-on-history names them. If the gear is entered from another one, say so with after.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        var unit = gear.Network.Assembly.Unit;
        if (gear.Report.Verdict != Verdict.AsCharted || gear.Solved.Gear.After is not null) return;
        var wrong = new List<Phrase>();
        foreach (var neighbour in new[] { gear.Index - 1, gear.Index + 1 })
        {
            if (neighbour < 0 || neighbour >= unit.Gears.Length) continue;
            var name = unit.Gears[neighbour].Name;
            if (gear.Solved.Others.FirstOrDefault(other => other.From == name) is not { } other || WrongIn(gear, other.Solution) is not { } clutch) return;
            wrong.Add(Phrase.Of($"from {name}, {clutch.Clutch} is {VerdictText.Of(clutch.Verdict)}"));
        }

        if (wrong.Count == 0) return;
        found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Subject(gear.Gear)}is as charted from rest alone: {Phrase.Join("; ", wrong)}"));
    }

    private static ClutchReport? WrongIn(GearContext gear, Solving.GearSolution state) => gear.Network.Clutches
        .Select(clutch => ClutchJudge.Judge(clutch, gear.Solved.Gear, state, NetPressureHere(gear, clutch), gear.Network.Assembly.Unit.Thresholds))
        .FirstOrDefault(clutch => clutch.Verdict != Verdict.AsCharted);

    // What holds it is what it has from rest; of one that is off there, line pressure is the measure.
    private static double? NetPressureHere(GearContext gear, Networks.ClutchElement clutch) =>
        Charts.Applies(gear.Solved.Gear, clutch.Clutch.Name) ? NetPressure.Of(clutch, gear.Solution) : null;
}
