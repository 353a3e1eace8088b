using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>What a unit needs besides clutches: oil for the converter, the cooler, lubrication, a balance chamber, the solenoids' feed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="At">The passage that must have it.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Need(string Name, PassageUse At, Place Place)
{
    /// <summary>The least pressure, or null.</summary>
    public Pressure? Least { get; init; }

    /// <summary>The highest pressure that it stands, or null.</summary>
    public Pressure? Most { get; init; }

    /// <summary>The least flow through the passage, or null.</summary>
    public Flow? Flow { get; init; }

    /// <summary>The gears in which it counts; empty for all.</summary>
    public ImmutableArray<NameUse> In { get; init; } = [];

    /// <summary>The gears in which it does not count.</summary>
    public ImmutableArray<NameUse> Except { get; init; } = [];

    /// <summary>Whether it counts in a gear.</summary>
    /// <param name="gear">The gear's name.</param>
    public bool CountsIn(string gear) => (In.IsEmpty || In.Any(use => use.Name == gear)) && !Except.Any(use => use.Name == gear);
}
