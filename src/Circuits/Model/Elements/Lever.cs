using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>One position of the manual valve.</summary>
/// <param name="Name">The position's name.</param>
/// <param name="Ports">What it joins.</param>
/// <param name="Place">Where it is written.</param>
public sealed record LeverPosition(string Name, ImmutableArray<Port> Ports, Place Place);

public sealed partial record Revision
{
    /// <summary>Positions of the manual valve.</summary>
    public ImmutableArray<LeverPosition> Lever { get; init; } = [];
}
