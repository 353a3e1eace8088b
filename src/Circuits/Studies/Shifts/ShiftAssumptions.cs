using Circuits.Networks;
using Circuits.Solving.Flow;

namespace Circuits.Studies.Shifts;

/// <summary>What torque capacity is reckoned with where the file does not say.</summary>
internal static class ShiftAssumptions
{
    /// <summary>Adds them.</summary>
    public static void Of(Network network, ShiftTrain train, List<Assumption> assumptions)
    {
        foreach (var clutch in network.Clutches.Select(element => element.Clutch))
        {
            Missing(clutch.Plates is null, FormattableString.Invariant($"{FlowDefaults.Plates} friction faces"));
            Missing(clutch.Friction is null, FormattableString.Invariant($"{FlowDefaults.Friction} as the friction"));
            Missing(clutch.Radius is null, FormattableString.Invariant($"{FlowDefaults.Radius} mm as the mean radius"));

            void Missing(bool isMissing, string what)
            {
                if (isMissing) assumptions.Add(new Assumption($"assumed {what} of clutch {clutch.Name}: none given", clutch.Place));
            }
        }

        if (!train.IsKnown)
        {
            assumptions.Add(new Assumption(
                "no gearset: what torque each clutch must carry is not known, so that a clutch counts as holding once its plates touch, and no flare or tie-up is seen",
                Findings.Place.None));
        }
    }
}
