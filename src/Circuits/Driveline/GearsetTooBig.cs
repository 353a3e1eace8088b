using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Driveline;

/// <summary>More planetaries or couplings than any gear train has.</summary>
public static class GearsetTooBig
{
    /// <summary>The most planetaries.</summary>
    public const int MostPlanetaries = 24;

    /// <summary>The most joints, clutches and one-way clutches, of each kind.</summary>
    public const int MostCouplings = 100;

    /// <summary>The rule.</summary>
    public static Rule Rule { get; } = new(
        "gearset-too-big", Severity.Error,
        "The gear train has more than 24 planetaries, or more than 100 joints, clutches or one-way clutches. Speeds are "
        + "worked out exactly, and the work grows with the third power of their number or faster.",
        "No road gear train comes near these numbers, so the description is most likely wrong.",
        "planetaries: {p1: {sun: 34, ring: 74}, p2: {sun: 34, ring: 74}, ...}    # 25 of them",
        "Take out what does not belong to the gear train. Members that are joined for ever may be named by one of their "
        + "names.");

    /// <summary>What of a gear set is too much.</summary>
    internal static IEnumerable<Finding> Check(GearSet set)
    {
        if (set.Planetaries.Length > MostPlanetaries)
        {
            yield return Rule.At(
                set.Planetaries[MostPlanetaries].Place, $"{set.Planetaries.Length} planetaries; the most is {MostPlanetaries}");
        }

        (string What, ImmutableArray<Coupling> Couplings)[] kinds =
            [("joints", set.Joined), ("clutches", set.Clutches), ("one-way clutches", set.OneWay)];
        foreach (var (what, couplings) in kinds)
        {
            if (couplings.Length <= MostCouplings) continue;
            yield return Rule.At(
                couplings[MostCouplings].Place, $"{couplings.Length} {what}; the most is {MostCouplings}");
        }
    }
}
