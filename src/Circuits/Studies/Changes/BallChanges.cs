using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Changes;

/// <summary>A ball is left out.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Ball">The ball.</param>
public sealed record DropBall(string Part, Ball Ball) : Change(Part, $"{Part}.{Ball.Name}", Ball.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"leave out ball {Element}");

    internal override string Item => $"ball {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.Of(Ball);

    internal override ImmutableArray<string> Claims => [$"ball {Element}"];

    internal override int Rank => 1;

    internal override Revision Rewrite(Revision revision) => revision with { Balls = revision.Balls.RemoveAll(ball => ball.Name == Ball.Name) };
}

/// <summary>A ball of another size takes a ball's place.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Ball">The ball before.</param>
/// <param name="Diameter">The new diameter.</param>
public sealed record ResizeBall(string Part, Ball Ball, Length Diameter) : Change(Part, $"{Part}.{Ball.Name}", Ball.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of(
        $"put a ball of {Diameter} in place of {Element}{(Ball.Diameter is { } was ? Phrase.Of($" ({was})") : null)}");

    internal override string Item => $"ball {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.Of(Ball);

    internal override ImmutableArray<string> Claims => [$"ball {Element}"];

    internal override Revision Rewrite(Revision revision) => Ball.Diameter == Diameter
        ? revision
        : revision with { Balls = [.. revision.Balls.Select(ball => ball.Name == Ball.Name ? ball with { Diameter = Diameter } : ball)] };
}

/// <summary>A ball is put into a pocket that has none for those seats.</summary>
/// <param name="Part">The pocket's part.</param>
/// <param name="Ball">The ball, with its seats.</param>
public sealed record InsertBall(string Part, Ball Ball) : Change(Part, $"{Part}.{Ball.Name}", Ball.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of(
        $"put a ball {(Ball.Diameter is { } size ? Phrase.Of($"of {size} ") : null)}into {Ball.Pocket.Name}, for {(Ball.Seats.Length == 1 ? Phrase.Of($"seat") : Phrase.Of($"seats"))} {Phrase.Join(" and ", Ball.Seats.Select(SeatText.Of))}");

    internal override string Item => $"pocket {Ball.Pocket.Name}";

    internal override string FunctionIn(Assembly assembly) => "lets oil through without a ball";

    internal override ImmutableArray<string> Claims => [$"pocket {Ball.Pocket.Name}"];

    internal override Revision Rewrite(Revision revision) => revision with { Balls = revision.Balls.Add(Ball) };
}

/// <summary>Seats as words name them.</summary>
internal static class SeatText
{
    public static Phrase Of(Seat seat) => seat switch
    {
        Seat.AtLocation at => Phrase.Of($"{at.Location}"),
        Seat.InCasting inside => Phrase.Of($"to {inside.To.Name}"),
        _ => Phrase.Empty,
    };
}
