using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>An accumulator: a piston on a spring that takes up oil.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="At">The passage it is filled from.</param>
/// <param name="Back">The passage behind its piston, or null for sump.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Accumulator(string Name, PassageUse At, PassageUse? Back, Place Place)
{
    /// <summary>Piston area.</summary>
    public Area? Area { get; init; }

    /// <summary>Spring force at the start of the stroke.</summary>
    public Force? Spring { get; init; }

    /// <summary>Spring rate.</summary>
    public SpringRate? Rate { get; init; }

    /// <summary>Full stroke.</summary>
    public Length? Stroke { get; init; }
}

public sealed partial record Revision
{
    /// <summary>Accumulators.</summary>
    public ImmutableArray<Accumulator> Accumulators { get; init; } = [];
}
