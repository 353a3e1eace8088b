using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>trapped</c>.</summary>
internal sealed class TrappedOil : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "trapped", Severity.Warning,
        Meaning: "A clutch chamber is joined to neither supply nor sump while its oil is under pressure.",
        OnTheRoad: "The clutch keeps its last pressure until it leaks down: it stays on, then lets go when nobody expects it.",
        Example: "3 after 2: low keeps 620 kPa, because its exhaust is blanked at plate@31.",
        Mend: "Give the chamber its way to sump: trace shows where the release path stops.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var clutch in gear.Report.Clutches)
        {
            if (ShutInRelease(gear, clutch) is { } shutIn) found.Add(shutIn);
            if (clutch.State != ClutchState.Trapped) continue;
            found.Add(Rule.At(
                gear.Element(clutch.Clutch).Clutch.Place,
                $"oil is trapped in {clutch.Clutch}{GearMention.In(gear.Gear)}: {clutch.Pressure}"));
        }
    }

    /// <summary>Release oil that cannot leave holds a servo off.</summary>
    private Finding? ShutInRelease(GearContext gear, ClutchReport clutch)
    {
        var node = gear.Element(clutch.Clutch).ReleaseChamber;
        if (node < 0 || gear.Solution.OilAt(node) != OilState.Trapped || gear.Solution.PressureAt(node) < 1) return null;
        return Rule.At(
            clutch.StoppedAt?.Place ?? gear.Element(clutch.Clutch).Clutch.Place,
            $"release oil is trapped in {clutch.Clutch} ({gear.Network.Nodes[node].Name}){GearMention.In(gear.Gear)}: {new Pressure(gear.Shown.PressureAt(node))}");
    }
}
