using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Solving;

namespace Circuits.Studies.Drawing;

/// <summary>What oil is, as a drawing tells it by colour and pattern.</summary>
public enum OilLook
{
    /// <summary>Line pressure, to within 3 %.</summary>
    Supply,

    /// <summary>Under pressure, but less than line: regulated, or between an opening from supply and one to sump.</summary>
    Reduced,

    /// <summary>Open to sump, or without pressure that matters (1 kPa).</summary>
    Exhaust,

    /// <summary>Joined to neither supply nor sump.</summary>
    Trapped,

    /// <summary>Oil of another circuit that the matched set does not have there.</summary>
    CrossFeed,
}

/// <summary>A node of the network in one gear.</summary>
/// <param name="Look">What its oil is.</param>
/// <param name="Kilopascals">Its gauge pressure.</param>
/// <param name="Differs">Whether its oil differs from what it is held against in a way that matters.</param>
/// <param name="Before">The pressure of what it is held against; null where that has no such passage, or there is nothing to hold against.</param>
public readonly record struct NodeView(OilLook Look, double Kilopascals, bool Differs, double? Before);

/// <summary>An assembly in one gear, ready to be drawn.</summary>
/// <param name="Solution">Its positions and pressures.</param>
/// <param name="Report">What was found about it.</param>
/// <param name="Against">What differences are told against: <c>matched set early</c>, <c>gear 2</c>; null for nothing.</param>
/// <param name="Nodes">The nodes, in the order of the network.</param>
/// <param name="Positions">Where elements stand in what it is held against, where that is somewhere else.</param>
/// <param name="Added">Names of openings and passages that what it is held against lacks.</param>
public sealed record GearView(
    GearSolution Solution, GearReport Report, string? Against, ImmutableArray<NodeView> Nodes,
    ImmutableDictionary<string, Stand> Positions, ImmutableHashSet<string> Added)
{
    /// <summary>The gear's name.</summary>
    public string Gear => Report.Gear;
}
