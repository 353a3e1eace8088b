using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A screen or filter between two passages: oil passes its mesh, and past a bypass, where it has one, once that opens.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="From">The passage before it.</param>
/// <param name="To">The passage behind it.</param>
/// <param name="Mesh">The hole that its clean mesh counts as.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Screen(string Name, PassageUse From, PassageUse To, Shape Mesh, Place Place)
{
    /// <summary>The share of its mesh that is stopped up: 0 clean, 1 shut.</summary>
    public double Clogged { get; init; }

    /// <summary>The ball or poppet that lets oil past the mesh; null where there is none.</summary>
    public Bypass? Bypass { get; init; }

    /// <summary>Whether the mesh is torn, or left out, and holds nothing back.</summary>
    public bool IsOut { get; init; }

    /// <summary>Whether any oil gets through at all.</summary>
    public bool LetsThrough => IsOut || Clogged < 1 || Bypass is { Stuck: not BypassStuck.Shut };
}

/// <summary>A ball or poppet on a spring beside a mesh.</summary>
/// <param name="OpensAt">The difference in pressure across the mesh at which it begins to open.</param>
/// <param name="Hole">Its hole, once it is fully open.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Bypass(Pressure OpensAt, Shape Hole, Place Place)
{
    /// <summary>How it has stuck, or null while it moves freely.</summary>
    public BypassStuck? Stuck { get; init; }
}

/// <summary>How a bypass has stuck.</summary>
public enum BypassStuck
{
    /// <summary>Fully open: oil passes unfiltered at any difference.</summary>
    Open,

    /// <summary>Shut: all oil has to pass the mesh.</summary>
    Shut,
}

public sealed partial record Revision
{
    /// <summary>Screens and filters.</summary>
    public ImmutableArray<Screen> Screens { get; init; } = [];
}
