using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>Oil lost from one passage to another that nobody intended.</summary>
/// <param name="A">One passage.</param>
/// <param name="B">The other, often the sump.</param>
/// <param name="Shape">Its size.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Leak(PassageUse A, PassageUse B, Shape Shape, Place Place);

public sealed partial record Revision
{
    /// <summary>Leaks inside the part.</summary>
    public ImmutableArray<Leak> Leaks { get; init; } = [];
}
