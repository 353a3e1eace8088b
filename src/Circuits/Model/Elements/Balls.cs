using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

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

public sealed partial record Revision
{
    /// <summary>Balls.</summary>
    public ImmutableArray<Ball> Balls { get; init; } = [];
}
