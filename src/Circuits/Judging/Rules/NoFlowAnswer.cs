using Circuits.Findings;
using Circuits.Solving.Rules;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>did-not-converge</c>, for gears that flow judges.</summary>
internal sealed class NoFlowAnswer : GearRule
{
    /// <inheritdoc/>
    public override Rule Rule => DidNotConverge.Rule;

    /// <inheritdoc/>
    public override void Find(GearContext gear, List<Finding> found)
    {
        foreach (var condition in gear.Report.Conditions)
        {
            if (condition.DidNotConvergeAt is not { } where) continue;
            found.Add(Rule.At(gear.LinePlace, $"{GearMention.Before(gear.Gear)}no pressures at {condition.At} at which all flows balance: it did not converge at {where}"));
        }
    }
}
