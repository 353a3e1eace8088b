using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>What is judged at a condition; a condition that judges nothing informs only.</summary>
[Flags]
public enum Judged
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Every gear, settled.</summary>
    Gears = 1,

    /// <summary>Changes from a gear that does not drive into one that does, and back.</summary>
    Engagements = 2,

    /// <summary>All other changes of gear.</summary>
    Shifts = 4,
}

/// <summary>A condition under which a unit has to work.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Pump">How fast the pump turns.</param>
/// <param name="Temperature">Temperature of the oil.</param>
/// <param name="Judges">What is judged there.</param>
/// <param name="Place">Where it is written; nowhere for a default.</param>
public sealed record Condition(string Name, PumpSpeed Pump, Temperature Temperature, Judged Judges, Place Place)
{
    /// <summary>
    /// Hot at idle, where the pump gives least and clearances lose most; hot on the road; and cold, where oil is thick and an engagement comes late.
    /// Common practice, no source.
    /// </summary>
    public static ImmutableArray<Condition> Defaults { get; } =
    [
        new("idle-hot", new PumpSpeed.Named("idle"), new Temperature(110), Judged.Gears | Judged.Engagements, Place.None),
        new("road-hot", new PumpSpeed.Named("road"), new Temperature(110), Judged.Gears | Judged.Shifts, Place.None),
        new("cold", new PumpSpeed.Named("idle"), new Temperature(0), Judged.Engagements, Place.None),
    ];
}

/// <summary>How fast the pump turns.</summary>
public abstract record PumpSpeed
{
    private PumpSpeed()
    {
    }

    /// <summary>One of the pump's own speeds.</summary>
    /// <param name="Name"><c>idle</c> or <c>road</c>.</param>
    public sealed record Named(string Name) : PumpSpeed;

    /// <summary>A speed of the condition's own.</summary>
    /// <param name="Speed">The speed.</param>
    public sealed record Given(Speed Speed) : PumpSpeed;
}
