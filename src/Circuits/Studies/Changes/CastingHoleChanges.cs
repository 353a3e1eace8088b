using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>A fixed hole inside a part has another size, or is plugged.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Restriction">The hole before.</param>
/// <param name="Hole">The hole after; null for none.</param>
public sealed record SetRestriction(string Part, Restriction Restriction, Shape.Hole? Hole)
    : Change(Part, $"{Restriction.A.Name}~{Restriction.B.Name}", Restriction.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => CastingHoles.Text(Hole, Phrase.Of($"the hole between {Restriction.A.Name} and {Restriction.B.Name}"), Restriction.Shape);

    /// <inheritdoc/>
    public override bool CanBeUndone => Hole is null;

    internal override string Item => $"hole {Restriction.A.Name} to {Restriction.B.Name}";

    internal override string FunctionIn(Assembly assembly) => $"meters oil between {Restriction.A.Name} and {Restriction.B.Name}";

    internal override ImmutableArray<string> Claims => [$"hole {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Restrictions = Hole is null
            ? revision.Restrictions.Remove(Restriction)
            : [.. revision.Restrictions.Select(other => other == Restriction ? other with { Shape = Hole } : other)],
    };
}

/// <summary>A ball's seat inside a casting has another size, or is plugged.</summary>
/// <param name="Part">The part that has the ball.</param>
/// <param name="Ball">The ball.</param>
/// <param name="Seat">The seat before.</param>
/// <param name="Hole">The seat's hole after; null for none.</param>
public sealed record SetSeat(string Part, Ball Ball, Seat.InCasting Seat, Shape.Hole? Hole)
    : Change(Part, $"{Part}.{Ball.Name}:{Seat.To.Name}", Seat.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => CastingHoles.Text(Hole, Phrase.Of($"the seat of ball {Part}.{Ball.Name} to {Seat.To.Name}"), Seat.Shape);

    /// <inheritdoc/>
    public override bool CanBeUndone => Hole is null;

    internal override string Item => $"seat of ball {Part}.{Ball.Name}";

    internal override string FunctionIn(Assembly assembly) => Functions.Of(Ball);

    internal override ImmutableArray<string> Claims => [$"seat {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Balls = [.. revision.Balls.Select(ball => ball.Name == Ball.Name ? ball with { Seats = Changed(ball.Seats) } : ball)],
    };

    private ImmutableArray<Seat> Changed(ImmutableArray<Seat> seats) =>
        Hole is null ? seats.Remove(Seat) : [.. seats.Select(seat => seat == Seat ? Seat with { Shape = Hole } : seat)];
}

/// <summary>Changes of holes inside parts, in words.</summary>
internal static class CastingHoles
{
    public static Phrase Text(Shape.Hole? hole, Phrase what, Shape before)
    {
        if (hole is null) return Phrase.Of($"plug {what}");
        var was = before.Area is { } area ? Phrase.Of($" (was {area.HoleDiameter})") : Phrase.Empty;
        return Phrase.Of($"widen {what} to {hole.Diameter}{was}");
    }
}
