using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A solenoid valve.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Feed">The passage that feeds it.</param>
/// <param name="Out">The passage that it feeds.</param>
/// <param name="To">Where its outlet drains.</param>
/// <param name="Kind">Switching or pressure.</param>
/// <param name="AtRest">Low or high when dead.</param>
/// <param name="PortArea">Its port's area, or null for the default.</param>
/// <param name="Table">Pressure against current, in rising order of current; empty when not given.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Solenoid(
    string Name, PassageUse Feed, PassageUse Out, PassageUse To, SolenoidKind Kind, RestState AtRest,
    Area? PortArea, ImmutableArray<CurrentPoint> Table, Place Place)
{
    /// <summary>What is wrong with it, or null.</summary>
    public SolenoidFault? Fault { get; init; }
}

/// <summary>What a solenoid does.</summary>
public enum SolenoidKind
{
    /// <summary>Joins its outlet to its feed or to its drain.</summary>
    Switching,

    /// <summary>Holds its outlet at the commanded pressure, at most the feed.</summary>
    Pressure,
}

/// <summary>What a solenoid's outlet has when the solenoid is dead.</summary>
public enum RestState
{
    /// <summary>No pressure: the outlet is open to its drain.</summary>
    Low,

    /// <summary>The feed's pressure.</summary>
    High,
}

/// <summary>One point of a pressure solenoid's table.</summary>
/// <param name="Current">The current.</param>
/// <param name="Pressure">The pressure that it holds at that current.</param>
public readonly record struct CurrentPoint(Current Current, Pressure Pressure);

/// <summary>What is wrong with a solenoid.</summary>
public enum SolenoidFault
{
    /// <summary>Its outlet is drained, whatever it is told.</summary>
    StuckLow,

    /// <summary>Its outlet has its whole feed, whatever it is told.</summary>
    StuckHigh,

    /// <summary>It gets no current, and gives what it gives at rest.</summary>
    Dead,

    /// <summary>A solenoid of the other polarity stands in its place: it gives at rest what it should give energized.</summary>
    Reversed,
}

public sealed partial record Revision
{
    /// <summary>Solenoids.</summary>
    public ImmutableArray<Solenoid> Solenoids { get; init; } = [];
}
