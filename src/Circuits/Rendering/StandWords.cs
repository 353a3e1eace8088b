using Circuits.Judging;
using Circuits.Networks;

namespace Circuits.Rendering;

/// <summary>Where things that move stand, in words.</summary>
public static class StandWords
{
    /// <summary>Where it stands: <c>rest</c>, <c>closes plate@11</c>, <c>holds 450 kPa</c>.</summary>
    /// <param name="stand">Where it stands.</param>
    /// <param name="units">The units of its pressure.</param>
    public static string Of(Stand stand, UnitSystem units = UnitSystem.Si) => stand switch
    {
        Stand.Spool { Stuck: { } stuck } => PhraseWords.Of(StuckText.Of(stuck)),
        Stand.Spool spool => spool.Moved ? "moved" : "rest",
        Stand.OnSeat seat => $"closes {seat.Seat}",
        Stand.Holds holds => $"holds {Measures.Of(holds.Set.Quantity, units)}",
        Stand.StuckRegulator stuck => PhraseWords.Of(StuckText.Of(stuck.How)),
        Stand.StuckBypass stuck => $"bypass {PhraseWords.Of(StuckText.Of(stuck.How))}",
        Stand.Simple simple => simple.Kind switch
        {
            StandKind.Open => "open",
            StandKind.SealsNothing => "seals nothing",
            StandKind.Drains => "drains",
            StandKind.Closed => "closed",
            StandKind.OpenToSupply => "open to its supply",
            StandKind.BypassShut => "bypass shut",
            StandKind.BypassOpen => "bypass open",
            StandKind.WithoutBypass => "no bypass",
            StandKind.WithoutMesh => "without its mesh",
            _ => "feeds",
        },
        _ => throw new ArgumentOutOfRangeException(nameof(stand)),
    };
}
