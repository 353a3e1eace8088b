using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Changes;

/// <summary>What torque capacity is reckoned with where the file does not say.</summary>
internal static class ShiftAssumptions
{
    /// <summary>Adds them.</summary>
    public static void Of(Network network, ShiftTrain train, List<Assumption> assumptions)
    {
        foreach (var clutch in network.Clutches.Select(element => element.Clutch))
        {
            Missing(clutch.Plates is null, $"{FlowDefaults.Plates} friction faces");
            Missing(clutch.Friction is null, $"{new Ratio(FlowDefaults.Friction)} as the friction");
            Missing(clutch.Radius is null, $"{new Length(FlowDefaults.Radius)} as the mean radius");

            void Missing(bool isMissing, PhraseBuilder what)
            {
                if (isMissing) assumptions.Add(new Assumption($"assumed {what.ToPhrase()} of clutch {clutch.Name}: none given", clutch.Place));
            }
        }

        if (!train.IsKnown)
        {
            assumptions.Add(new Assumption(
                $"no gearset: what torque each clutch must carry is not known, so that a clutch counts as holding once its plates touch, and no flare or tie-up is seen",
                Place.None));
        }
    }
}
