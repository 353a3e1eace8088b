using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>never-settles</c>.</summary>
internal sealed class NeverSettles : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "never-settles", Severity.Error,
        Meaning: "No positions of the valves and balls agree with the pressures they cause: the state goes to and fro.",
        OnTheRoad: "Shuddering pressure, a valve that hunts, a clutch that grabs and lets go.",
        Example: "Valve select is moved by oil that it cuts off itself as soon as it moves.",
        Mend: "Look at what goes to and fro: a signal circuit is usually fed through the valve that it moves.");

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        if (!gear.Report.Settled)
            found.Add(Rule.At(gear.Solved.Gear.Place, $"{GearMention.Subject(gear.Gear)}never settles: {gear.Report.Cycle} go to and fro"));
    }
}
