using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Judging.Conditions;

/// <summary>Something that a unit needs besides clutches, given by its file or recognized by what the matched set does.</summary>
/// <param name="Name">Its name: the file's, or the passage's.</param>
/// <param name="Places">Passages of one pressure in the matched set, that of the need first.</param>
/// <param name="Place">The line that it stands in, or that of its passage.</param>
public sealed record UnitNeed(string Name, ImmutableArray<PassageName> Places, Place Place)
{
    /// <summary>What the file says; null for a need that was recognized.</summary>
    public Need? Given { get; init; }

    /// <summary>
    /// For a recognized need, the fixed opening by which its oil goes on to sump in the matched set: that is what it was recognized by. Else null.
    /// </summary>
    public string? DrainsBy { get; init; }

    /// <summary>For a recognized need, the gears in which the matched set has it at every condition; empty for a given one.</summary>
    public ImmutableArray<string> Gears { get; init; } = [];

    /// <summary>Whether it counts in a gear.</summary>
    /// <param name="gear">The gear's name.</param>
    public bool CountsIn(string gear) => Given?.CountsIn(gear) ?? Gears.Contains(gear);
}
