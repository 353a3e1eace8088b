using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Changes;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>unmetered</c>.</summary>
internal sealed class Unmetered : AssemblyRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "unmetered", Severity.Error,
        Meaning: "Every matched set eases this clutch on or off through a hole, on its apply or on its release side. This assembly does so on neither.",
        OnTheRoad: "Every gear engages, but the shift slams, or two clutches hold at once: plates and shafts suffer.",
        Example: "Early parts meter direct on apply (2.1 mm at plate@22), late parts on release (2.3 mm at plate@27). New plate on old casting: neither.",
        Mend: "Fit plate and casting of one level. Every gear engaging on the stand proves nothing here.");

    /// <summary>How much wider, by area, than the widest of the matched sets counts as not metered.</summary>
    private const double Wider = 2;

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        if (assembly.Matched.IsEmpty || assembly.Solved.Network.Assembly.Matched is not null) return;
        var gears = assembly.Gears.Select(gear => gear.Report).ToImmutableArray();
        var told = new HashSet<(string, string)>();
        for (var i = 0; i < gears.Length; i++)
        {
            foreach (var clutch in gears[i].Clutches)
            {
                if (Metering.Of(gears, i, clutch.Clutch) is not { } now) continue;
                var before = assembly.Matched.Select(set => Metering.Of(set, i, clutch.Clutch)).ToList();
                if (before.Exists(control => control is null || control.IsPort)) continue;
                var widest = before.MaxBy(control => control!.SquareMillimetres)!;
                if (now.SquareMillimetres <= Wider * widest.SquareMillimetres || !told.Add((clutch.Clutch, now.Element))) continue;
                var effect = ClutchEffect.Of(assembly.Changes, clutch.Clutch);
                found.Add(Rule.At(
                    now.Place,
                    $"{clutch.Clutch} is metered nowhere{GearMention.In(gears[i].Gear)}: narrowest is {now.Element}, as a hole of {now.Diameter}; matched sets have {Metering.List(before)}{effect?.Told}") with
                {
                    Severity = effect is { IsWorse: false } ? Severity.Warning : Rule.Severity,
                    Gear = gears[i].Gear,
                    Related = [new RelatedPlace(widest.Place, $"metered here in a matched set")],
                });
            }
        }
    }
}
