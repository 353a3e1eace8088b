using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Changes;

/// <summary>A ball is left out.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Ball">The ball.</param>
public sealed record DropBall(string Part, Ball Ball) : Change(Part, $"{Part}.{Ball.Name}", Ball.Place)
{
    /// <inheritdoc/>
    public override string Text => $"leave out ball {Element}";

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
    public override string Text => string.Create(
        CultureInfo.InvariantCulture,
        $"put a ball of {Diameter.Millimetres:0.##} mm in place of {Element}{(Ball.Diameter is { } was ? $" ({was.Millimetres:0.##} mm)" : "")}");

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
    public override string Text => string.Create(
        CultureInfo.InvariantCulture,
        $"put a ball of {Ball.Diameter?.Millimetres:0.##} mm into {Ball.Pocket.Name}, for {(Ball.Seats.Length == 1 ? "seat" : "seats")} {string.Join(" and ", Ball.Seats.Select(SeatText.Of))}");

    internal override ImmutableArray<string> Claims => [$"pocket {Ball.Pocket.Name}"];

    internal override Revision Rewrite(Revision revision) => revision with { Balls = revision.Balls.Add(Ball) };
}

/// <summary>Seats as words name them.</summary>
internal static class SeatText
{
    public static string Of(Seat seat) => seat switch
    {
        Seat.AtLocation at => at.Location,
        Seat.InCasting inside => $"to {inside.To.Name}",
        _ => "",
    };
}
