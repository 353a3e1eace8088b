using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>A hole or slot in a sheet.</summary>
/// <param name="At">The locations it spans: one, or several for a slot.</param>
/// <param name="Shape">Its shape and size.</param>
/// <param name="Cup">Whether an orifice cup is pressed into it.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Opening(ImmutableArray<NameUse> At, Shape Shape, bool Cup, Place Place);

public sealed partial record Revision
{
    /// <summary>Openings of a sheet.</summary>
    public ImmutableArray<Opening> Openings { get; init; } = [];

    /// <summary>Whether the sheet is open at every location that it does not name (a gasket).</summary>
    public bool OpenElsewhere { get; init; }

    /// <summary>The locations at which such a sheet has metal or paper all the same.</summary>
    public ImmutableArray<NameUse> OpenExcept { get; init; } = [];
}
