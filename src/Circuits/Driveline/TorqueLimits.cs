using System.Collections.Immutable;

namespace Circuits.Driveline;

/// <summary>How much torque at the input clutches can hold, and how much each must.</summary>
/// <param name="Clutches">The clutches of the gear train.</param>
/// <param name="Ways">
/// Ways in which the gear train can give way: how far each clutch then slips while the input turns by one, in the order of the clutches.
/// </param>
public sealed record TorqueLimits(ImmutableArray<string> Clutches, ImmutableArray<ImmutableArray<double>> Ways)
{
    /// <summary>The torque at the input that can be held, N m; infinite when nothing can give way.</summary>
    /// <param name="capacities">Torque capacity of each clutch, N m, in their order; 0 for one that is off.</param>
    public double Held(ReadOnlySpan<double> capacities)
    {
        var least = double.PositiveInfinity;
        foreach (var way in Ways)
        {
            var work = 0.0;
            for (var i = 0; i < way.Length; i++)
            {
                if (way[i] > 0) work += way[i] * capacities[i];
            }

            least = Math.Min(least, work);
        }

        return least;
    }

    /// <summary>
    /// The torque that a clutch must carry for each unit at the input, while the other clutches of a set hold whatever they must: 0
    /// where they hold it without this one.
    /// </summary>
    /// <param name="clutch">The clutch; one that the gear train does not know carries nothing.</param>
    /// <param name="holding">The clutches that hold.</param>
    public double Need(string clutch, IReadOnlyCollection<string> holding)
    {
        var index = Clutches.IndexOf(clutch);
        if (index < 0) return 0;
        var need = 0.0;
        foreach (var way in Ways)
        {
            if (way[index] > 0 && !Enumerable.Range(0, way.Length).Any(i => i != index && way[i] > 0 && holding.Contains(Clutches[i])))
                need = Math.Max(need, 1 / way[index]);
        }

        return need;
    }
}
