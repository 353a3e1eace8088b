using Circuits.Findings;
using Circuits.Networks;
using Circuits.Solving;
using System.Globalization;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>open-drain</c>.</summary>
internal sealed class OpenDrain : IGearRule
{
    /// <inheritdoc/>
    public Rule Rule { get; } = new(
        "open-drain", Severity.Warning,
        Meaning: "Oil under pressure runs to sump where, in the matched set and this gear, none does.",
        OnTheRoad: "Pressure falls, most of all hot at idle: slip, delay, starved lube.",
        Example: "3: drive oil leaves through the manual valve behind plate@12, 8 mm2 to sump.",
        Mend: "Find out why the way is open: a ball left out or not sealing, a slot, a valve in the wrong position.");

    /// <inheritdoc/>
    public IEnumerable<Finding> Find(GearContext gear)
    {
        if (gear.Reference.IsEmpty || gear.IsMatched) yield break;
        var usual = gear.Reference.SelectMany(reference => Draining(reference.Solution)
            .Select(link => Routes.KeyOf(reference.Solution.Network, link))).ToHashSet();
        foreach (var link in Draining(gear.Solution))
        {
            if (usual.Contains(Routes.KeyOf(gear.Network, link))) continue;
            var (a, b) = (gear.Network.Nodes[link.A], gear.Network.Nodes[link.B]);
            var (from, to) = gear.Solution.PressureAt(link.A) > gear.Solution.PressureAt(link.B) ? (a, b) : (b, a);
            yield return Rule.At(
                link.Place,
                string.Create(CultureInfo.InvariantCulture, $"oil leaves {from.Name} ({gear.Solution.PressureAt(from.Index):0} kPa) to {to.Name} through {link.Element} in {gear.Gear}"));
        }
    }

    /// <summary>Open links at which pressure ends: on one side some, on the other sump.</summary>
    private static IEnumerable<Link> Draining(GearSolution state) => state.Network.Links.Where(link =>
        link.Gate.Kind != GateKind.Regulator && state.IsOpen(link)
        && Math.Max(state.PressureAt(link.A), state.PressureAt(link.B)) > 1
        && Math.Min(state.PressureAt(link.A), state.PressureAt(link.B)) < 1e-3);
}
