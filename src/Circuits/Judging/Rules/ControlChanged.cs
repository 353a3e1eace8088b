using Circuits.Findings;
using Circuits.Judging.Changes;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>control-changed</c>.</summary>
internal sealed class ControlChanged : AssemblyRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "control-changed", Severity.Warning,
        Meaning: "A clutch is applied, or released, through a clearly wider or narrower opening than in the matched set (half as much area again, or less than two thirds).",
        OnTheRoad: "Wider: harsher, or it lets go too soon. Narrower: late and soft, or it drags on into the next gear.",
        Example: "direct applies through 8.0 mm at plate@22; the matched set has 2.1 mm there.",
        Mend: "Meant as a change of feel, check every other gear that uses the hole. Not meant: fit the part of the right level.");

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        if (assembly.Solved.Network.Assembly.Matched is not null) return;
        var changes = assembly.Gears
            .SelectMany(gear => ControlChange.Of(gear).Select(change => (gear.Gear, Change: change)))
            .GroupBy(pair => (pair.Change.Clutch, pair.Change.OnApply, pair.Change.Now.Element, pair.Change.Now.SquareMillimetres));
        foreach (var group in changes)
        {
            var change = group.First().Change;
            var does = change.OnApply ? Phrase.Of($"applies") : Phrase.Of($"releases");
            found.Add(Rule.At(
                change.Now.Place,
                $"{change.Clutch} now {does} through {change.Now.Diameter} ({change.Now.Element}), was {change.Before.Diameter} ({change.Before.Element}), {Gears(group.Select(pair => pair.Gear))}{ClutchEffect.Of(assembly.Changes, change.Clutch, change.OnApply ? ClutchRole.OnComing : ClutchRole.OffGoing)?.Told}") with
            {
                Gear = group.First().Gear,
                Related = [new RelatedPlace(change.Before.Place, $"the matched set's opening")],
            });
        }
    }

    private static Phrase Gears(IEnumerable<string> gears) => Phrase.Of($"in {gears}");
}
