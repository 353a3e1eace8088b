using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A place where a passage opens on a joint.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Location">The location's number, as the file writes it.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct LocationUse(string Joint, string Location, Place Place);

/// <summary>A cavity cast into a casting.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Circuit">The circuit it is meant to belong to; its own name unless the file says otherwise.</param>
/// <param name="Locations">Where it opens on joints; may be empty.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Passage(string Name, string Circuit, ImmutableArray<LocationUse> Locations, Place Place)
{
    /// <summary>Length of the track, for line friction.</summary>
    public Length? Length { get; init; }

    /// <summary>Cross-section of the track, for line friction.</summary>
    public Area? Section { get; init; }

    /// <summary>Volume of oil it holds.</summary>
    public Volume? Volume { get; init; }
}

public sealed partial record Revision
{
    /// <summary>Passages of a casting.</summary>
    public ImmutableArray<Passage> Passages { get; init; } = [];
}
