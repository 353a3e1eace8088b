using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>open-drain</c>.</summary>
internal sealed class OpenDrain : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "open-drain", Severity.Warning,
        Meaning: "Oil under pressure runs to sump where, in the matched set and this gear, none does.",
        OnTheRoad: "Pressure falls, most of all hot at idle: slip, delay, starved lube.",
        Example: "3: drive oil leaves through the manual valve behind plate@12, 8 mm2 to sump.",
        Mend: "Find out why the way is open: a ball left out or not sealing, a slot, a valve in the wrong position.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (gear.Reference.IsEmpty || gear.IsMatched || !gear.Report.Settled) return;
        var usual = gear.Reference.SelectMany(reference => Draining(reference.Solution)
            .Select(link => Routes.KeyOf(reference.Solution.Network, link))).ToHashSet();
        var unusual = Draining(gear.Solution).Where(link => !usual.Contains(Routes.KeyOf(gear.Network, link))).ToList();
        if (unusual.Count == 0) return;
        var routes = new Routes(gear.Solution, gear.Reference.Select(reference => reference.Solution));
        found.AddRange(unusual.Select(link => Tell(gear, routes, link)).Distinct());
    }

    /// <summary>The place is where the oil leaves its usual ways, which may lie before the opening to sump itself.</summary>
    private Finding Tell(GearContext gear, Routes routes, Link link)
    {
        var end = gear.Solution.PressureAt(link.A) > gear.Solution.PressureAt(link.B) ? link.A : link.B;
        var strayed = routes.LeavesUsualWays(end) ?? new Step(end, link.Other(end), link);
        var (from, to) = (gear.Network.Nodes[strayed.From], gear.Network.Nodes[strayed.To]);
        var into = to.Kind == NodeKind.Opening ? Phrase.Empty : Phrase.Of($" into {to.Name}");
        var by = strayed.Link == link ? Phrase.Empty : Phrase.Of($", which is open to sump by {link.Element}");
        return Rule.At(
            strayed.Link.Place,
            $"oil leaves {from.Name} ({new Pressure(gear.Shown.PressureAt(from.Index))}) through {strayed.Link.Element}{into}{by}{GearMention.AtEnd(gear.Gear)}");
    }

    /// <summary>Open links at which pressure ends: on one side some, on the other sump.</summary>
    private static List<Link> Draining(GearSolution state) => state.Network.Links.Where(link =>
        link.Gate.Kind != GateKind.Regulator && state.IsOpen(link)
        && Math.Max(state.PressureAt(link.A), state.PressureAt(link.B)) > 0.01
        && Math.Min(state.PressureAt(link.A), state.PressureAt(link.B)) < 1e-3).ToList();
}
