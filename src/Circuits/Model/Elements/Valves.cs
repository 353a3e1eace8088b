using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A spool with two positions.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Rest">What it joins at rest.</param>
/// <param name="Moved">What it joins moved.</param>
/// <param name="MovedBy">The forces that move it.</param>
/// <param name="HeldBy">The forces that hold it at rest.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Valve(
    string Name, ImmutableArray<Port> Rest, ImmutableArray<Port> Moved,
    ImmutableArray<SpoolForce> MovedBy, ImmutableArray<SpoolForce> HeldBy, Place Place)
{
    /// <summary>Full travel from rest to moved, for timed shifts.</summary>
    public Length? Travel { get; init; }

    /// <summary>
    /// How far past the middle of its travel it goes before a port of the other position opens; less than nothing for an underlap, with
    /// which ports of both positions are open around the middle. Null where nobody measured it.
    /// </summary>
    public Length? Overlap { get; init; }

    /// <summary>The share of their area that ports of both positions keep with the spool midway: nothing with an overlap; null where no lap is given.</summary>
    public double? OpenMidway => this is { Overlap.Millimetres: var lap, Travel.Millimetres: var travel } ? Math.Max(0, -lap / ((travel / 2) - lap)) : null;

    /// <summary>Where it has stuck, or null while it moves freely.</summary>
    public StuckAt? Stuck { get; init; }
}

/// <summary>A force on a spool.</summary>
/// <param name="Place">Where it is written.</param>
public abstract record SpoolForce(Place Place)
{
    /// <summary>A pressure acting on a land.</summary>
    /// <param name="From">The passage that it comes from.</param>
    /// <param name="Area">The area that it acts on, or null when not given.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Signal(PassageUse From, Area? Area, Place Place) : SpoolForce(Place);

    /// <summary>A spring.</summary>
    /// <param name="Preload">Its force with the spool at rest.</param>
    /// <param name="Rate">Its rate, or null when not given.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Spring(Force Preload, SpringRate? Rate, Place Place) : SpoolForce(Place);
}

/// <summary>Where a spool has stuck.</summary>
public enum StuckAt
{
    /// <summary>At rest, whatever moves it.</summary>
    Rest,

    /// <summary>Moved, whatever holds it.</summary>
    Moved,

    /// <summary>Midway, with laps so short that every port of both positions is open a little.</summary>
    Midway,

    /// <summary>Midway, with laps so long that no port is open.</summary>
    MidwayShut,
}

public sealed partial record Revision
{
    /// <summary>Two-position spools.</summary>
    public ImmutableArray<Valve> Valves { get; init; } = [];
}
