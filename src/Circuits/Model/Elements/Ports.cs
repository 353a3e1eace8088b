using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>Passages that a valve joins in one of its positions.</summary>
/// <param name="Passages">Two or more passages, all joined to one another.</param>
/// <param name="Area">The port's open area, or null for the default.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Port(ImmutableArray<PassageUse> Passages, Area? Area, Place Place);
