using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>A fixed hole between two passages, inside a part.</summary>
/// <param name="A">One passage.</param>
/// <param name="B">The other.</param>
/// <param name="Shape">Its size.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Restriction(PassageUse A, PassageUse B, Shape Shape, Place Place);

public sealed partial record Revision
{
    /// <summary>Restrictions inside the part.</summary>
    public ImmutableArray<Restriction> Restrictions { get; init; } = [];
}
