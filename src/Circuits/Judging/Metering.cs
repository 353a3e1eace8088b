using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Judging;

/// <summary>Where a clutch is eased on or off.</summary>
internal static class Metering
{
    /// <summary>
    /// The narrowest opening that a clutch meets when a gear comes or goes: on its apply side in that gear, on its release
    /// side in the neighbouring gears without it. Null when it is not applied there as charted.
    /// </summary>
    /// <param name="gears">The gears of one assembly.</param>
    /// <param name="index">The gear.</param>
    /// <param name="clutch">The clutch.</param>
    public static Control? Of(ImmutableArray<GearReport> gears, int index, string clutch)
    {
        var here = In(gears[index], clutch);
        if (here is not { Charted: true, Strength: ClutchState.Applied, Apply: { } apply }) return null;
        var without = new[] { index - 1, index + 1 }
            .Where(other => other >= 0 && other < gears.Length && !In(gears[other], clutch).Charted).ToList();
        if (without.Count == 0)
            without = [.. Enumerable.Range(0, gears.Length).Where(other => !In(gears[other], clutch).Charted)];
        return without.Select(other => In(gears[other], clutch).Release).Append(apply)
            .Where(control => control is not null).MinBy(control => control!.SquareMillimetres);
    }

    /// <summary>Openings in words.</summary>
    public static Phrase List(IEnumerable<Control?> controls) => Phrase.Join(", ", controls.Select(control => Phrase.Of($"{control!.Diameter} ({control.Element})")).Distinct());

    private static ClutchReport In(GearReport gear, string clutch) => gear.Clutches.First(candidate => candidate.Clutch == clutch);
}
