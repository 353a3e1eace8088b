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

/// <summary>A hole or slot in a sheet.</summary>
/// <param name="At">The locations it spans: one, or several for a slot.</param>
/// <param name="Shape">Its shape and size.</param>
/// <param name="Cup">Whether an orifice cup is pressed into it.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Opening(ImmutableArray<NameUse> At, Shape Shape, bool Cup, Place Place);

/// <summary>A seat that a ball can close.</summary>
/// <param name="Place">Where it is written.</param>
public abstract record Seat(Place Place)
{
    /// <summary>A seat at an opening of the sheet on a joint, at a location of the ball's pocket.</summary>
    /// <param name="Joint">The joint, or null when the pocket opens at that number on one joint only.</param>
    /// <param name="Location">The location's number.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record AtLocation(string? Joint, string Location, Place Place) : Seat(Place);

    /// <summary>A seat inside the casting, in a hole to another passage.</summary>
    /// <param name="To">The passage beyond the hole.</param>
    /// <param name="Shape">The hole.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record InCasting(PassageUse To, Shape Shape, Place Place) : Seat(Place);
}

/// <summary>A check ball (one seat) or a two-way ball (two seats).</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Pocket">The passage it lies in.</param>
/// <param name="Seats">The seats it can close.</param>
/// <param name="Diameter">Its diameter, or null when not given.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Ball(string Name, PassageUse Pocket, ImmutableArray<Seat> Seats, Length? Diameter, Place Place)
{
    /// <summary>How far it can leave a seat before its pocket stops it; null where it gets out of the way.</summary>
    public Length? Lift { get; init; }
}

/// <summary>Passages that a valve joins in one of its positions.</summary>
/// <param name="Passages">Two or more passages, all joined to one another.</param>
/// <param name="Area">The port's open area, or null for the default.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Port(ImmutableArray<PassageUse> Passages, Area? Area, Place Place);

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

/// <summary>A pressure that sets a regulator.</summary>
/// <param name="From">The passage that it comes from.</param>
/// <param name="Ratio">Kilopascals of set pressure per kilopascal of signal; the default is 1. May be negative.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct RegulatorSignal(PassageUse From, double Ratio, Place Place);

/// <summary>A regulator's spool as it was measured: what its droop follows from.</summary>
/// <param name="Land">Area on which the regulated pressure acts against the spring.</param>
/// <param name="Rate">Spring rate.</param>
/// <param name="Travel">From a port's edge to fully open.</param>
/// <param name="Overlap">Travel between shutting one port and opening the other, each way; less than nothing for an underlap.</param>
public sealed record RegulatorSpool(Area Land, SpringRate Rate, Length Travel, Length Overlap);

/// <summary>A valve that holds a pressure.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Spring">What its spring alone sets; the default is 0 for a reducing regulator, none for a spilling one.</param>
/// <param name="SetBy">Pressures that add to the spring.</param>
/// <param name="PortArea">Its port's full area, or null for the default.</param>
/// <param name="Place">Where it is written.</param>
public abstract record Regulator(
    string Name, Pressure? Spring, ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
{
    /// <summary>Its spool, where it was measured.</summary>
    public RegulatorSpool? Spool { get; init; }

    /// <summary>How it has stuck, or null while it regulates.</summary>
    public RegulatorStuck? Stuck { get; init; }

    /// <summary>A regulator that holds a passage by spilling what is too much: the line regulator, a relief valve.</summary>
    /// <param name="Holds">The passage that it holds.</param>
    /// <param name="SpillsTo">Where it spills, first outlet first.</param>
    /// <param name="Name">Its name within the part.</param>
    /// <param name="Spring">What its spring alone sets.</param>
    /// <param name="SetBy">Boost pressures.</param>
    /// <param name="PortArea">Its port's full area.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Spilling(
        string Name, PassageUse Holds, ImmutableArray<PassageUse> SpillsTo, Pressure? Spring,
        ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
        : Regulator(Name, Spring, SetBy, PortArea, Place);

    /// <summary>A regulator that gives a lower pressure: min(supply, ratio x signal + spring), else opens its outlet to <c>to</c>.</summary>
    /// <param name="From">The passage that feeds it.</param>
    /// <param name="Out">The passage that it feeds.</param>
    /// <param name="To">Where the outlet drains when the pressure is too high.</param>
    /// <param name="Name">Its name within the part.</param>
    /// <param name="Spring">What its spring alone sets.</param>
    /// <param name="SetBy">Signal pressures.</param>
    /// <param name="PortArea">Its port's full area.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Reducing(
        string Name, PassageUse From, PassageUse Out, PassageUse To, Pressure? Spring,
        ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
        : Regulator(Name, Spring, SetBy, PortArea, Place);
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

/// <summary>One position of the manual valve.</summary>
/// <param name="Name">The position's name.</param>
/// <param name="Ports">What it joins.</param>
/// <param name="Place">Where it is written.</param>
public sealed record LeverPosition(string Name, ImmutableArray<Port> Ports, Place Place);

/// <summary>A fixed hole between two passages, inside a part.</summary>
/// <param name="A">One passage.</param>
/// <param name="B">The other.</param>
/// <param name="Shape">Its size.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Restriction(PassageUse A, PassageUse B, Shape Shape, Place Place);

/// <summary>Oil lost from one passage to another that nobody intended.</summary>
/// <param name="A">One passage.</param>
/// <param name="B">The other, often the sump.</param>
/// <param name="Shape">Its size.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Leak(PassageUse A, PassageUse B, Shape Shape, Place Place);

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

/// <summary>A drum that turns with the oil in it.</summary>
/// <param name="Turns">The member of the gear train that it turns with.</param>
/// <param name="Oil">Radius down to which the oil stands: where it comes in.</param>
/// <param name="Inner">Inner radius of the piston.</param>
/// <param name="Outer">Outer radius of the piston.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Drum(Member Turns, Length Oil, Length Inner, Length Outer, Place Place);

/// <summary>
/// A clutch or brake, or what a part revision changes of it. Every property but the name may be missing;
/// the chamber is required once all changes are applied.
/// </summary>
/// <param name="Name">Its name in the whole unit.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Clutch(string Name, Place Place)
{
    /// <summary>The passage that is its apply chamber.</summary>
    public PassageUse? At { get; init; }

    /// <summary>Piston area.</summary>
    public Area? Area { get; init; }

    /// <summary>The chamber on a servo's release side, or null for a plain clutch.</summary>
    public PassageUse? ReleaseAt { get; init; }

    /// <summary>Area on which release oil acts; the piston area when missing.</summary>
    public Area? ReleaseArea { get; init; }

    /// <summary>Return spring force at the start of the stroke.</summary>
    public Force? ReturnSpring { get; init; }

    /// <summary>Return spring rate.</summary>
    public SpringRate? Rate { get; init; }

    /// <summary>Stroke until the plates touch.</summary>
    public Length? Stroke { get; init; }

    /// <summary>Volume that fills the chamber until the plates touch.</summary>
    public Volume? Fill { get; init; }

    /// <summary>How stiff the plates are, cushion and drum with them, once they touch.</summary>
    public SpringRate? PackRate { get; init; }

    /// <summary>Number of friction faces.</summary>
    public int? Plates { get; init; }

    /// <summary>Coefficient of friction.</summary>
    public double? Friction { get; init; }

    /// <summary>Mean friction radius.</summary>
    public Length? Radius { get; init; }

    /// <summary>The drum that its piston turns with, or null for one that stands, or whose oil is balanced.</summary>
    public Drum? Drum { get; init; }

    /// <summary>This clutch with what <paramref name="change"/> says laid over it.</summary>
    /// <param name="change">The change; what it leaves out stays.</param>
    public Clutch With(Clutch change) => this with
    {
        Place = change.Place,
        At = change.At ?? At,
        Area = change.Area ?? Area,
        ReleaseAt = change.ReleaseAt ?? ReleaseAt,
        ReleaseArea = change.ReleaseArea ?? ReleaseArea,
        ReturnSpring = change.ReturnSpring ?? ReturnSpring,
        Rate = change.Rate ?? Rate,
        Stroke = change.Stroke ?? Stroke,
        Fill = change.Fill ?? Fill,
        PackRate = change.PackRate ?? PackRate,
        Plates = change.Plates ?? Plates,
        Friction = change.Friction ?? Friction,
        Radius = change.Radius ?? Radius,
        Drum = change.Drum ?? Drum,
    };
}
