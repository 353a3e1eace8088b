using System.Collections.Immutable;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Judging.Changes;

/// <summary>What oil that turns with a clutch's drum adds to the force on its piston.</summary>
internal static class DrumHeads
{
    /// <summary>Force on each clutch's piston, N; empty where no clutch has a drum.</summary>
    /// <param name="network">The network.</param>
    /// <param name="train">The gear train.</param>
    /// <param name="from">The gear whose speeds drums turn with: until the clutches take hold it is the one that is left.</param>
    /// <param name="revolutionsPerMinute">Speed of the input.</param>
    /// <param name="density">Of the oil, kg/m3.</param>
    /// <param name="assumptions">Takes what had to be assumed.</param>
    public static ImmutableArray<double> Of(
        Network network, ShiftTrain train, GearState from, double revolutionsPerMinute, double density, ICollection<Assumption> assumptions)
    {
        if (network.Clutches.All(element => element.Clutch.Drum is null)) return [];
        var first = network.Clutches.First(element => element.Clutch.Drum is not null).Clutch;
        assumptions.Add(new Assumption($"assumed that the input turns with the pump, and drums at the speeds of the gear that is left, until a shift is over", first.Drum!.Place));
        return [.. network.Clutches.Select(element => element.Clutch.Drum is { } drum ? Head(element.Clutch, drum) : 0)];

        double Head(Clutch clutch, Drum drum)
        {
            if (train.Speed(from, drum.Turns.Name) is { } speed)
            {
                var turning = speed * revolutionsPerMinute * Math.PI / 30;
                return CentrifugalHead.Force(density, turning, drum.Outer.Millimetres / 1e3, drum.Inner.Millimetres / 1e3, drum.Oil.Millimetres / 1e3);
            }

            assumptions.Add(new Assumption($"assumed that the drum of clutch {clutch.Name} stands in {from.Name}: the speed of {drum.Turns.Name} is open there", drum.Place));
            return 0;
        }
    }
}
