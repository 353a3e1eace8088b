using Circuits.Findings;
using Circuits.Networks;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>blanked-feed</c>.</summary>
internal sealed class BlankedFeed : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "blanked-feed", Severity.Error,
        Meaning: "The oil of a charted clutch stops at metal: a blank in a sheet, a wall in a casting.",
        OnTheRoad: "The clutch has no feed at all, however good pump, valves and solenoids are.",
        Example: "plate 1 has no hole at 22, where body 2 brings direct its oil.",
        Mend: "Lay the sheet on the casting and look through location by location. Fit the revision that is open there.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (!gear.Report.Settled) return;
        foreach (var clutch in gear.Report.Clutches)
        {
            if (clutch.Verdict != Model.Verdict.Lost || clutch.StoppedAt is not { } stop) continue;
            var metal = gear.Network.Links.FirstOrDefault(link => link.Kind == LinkKind.Metal && link.Element == stop.Element);
            if (metal is null) continue;
            found.Add(Rule.At(stop.Place, $"{stop.Element} ({metal.Part} {metal.Revision}) blanks the feed of {clutch.Clutch}{GearMention.In(gear.Gear)}: {stop.Reason}"));
        }
    }
}
