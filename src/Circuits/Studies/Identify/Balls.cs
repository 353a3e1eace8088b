using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Balls(int revision)
    {
        foreach (var ball in part.Revisions[revision].Balls) DeriveBall(part, ball, revision, table);
        if (part.Kind == PartKind.BallSet) CountBalls(part, revision, table);
    }

    /// <summary>A ball in the pocket of that name.</summary>
    public static Trait BallIn(string part, string pocket, bool sized = false) =>
        WithSize(part, TraitKind.Ball, pocket, $"ball in {pocket}", sized, Means.LookAsFound, Means.Caliper);

    /// <summary>How many balls of a size a set has.</summary>
    public static Trait BallsOf(string part, BenchSize size) =>
        new(part, new TraitKey(TraitKind.BallCountOfSize, BenchText.Of(size), false), $"balls of {BenchText.Of(size)}", Means.Count) { One = $"ball of {BenchText.Of(size)}", Size = size };

    /// <summary>How many balls of a size that no revision is known to have; one of a size that is not given may be of it.</summary>
    public static TraitRow OtherBalls(Part part, BenchSize size) => new(
        BallsOf(part.Name, size), [.. part.Revisions.Select(revision => revision.Balls.Any(ball => ball.Diameter is null) ? Answer.NotGiven : Answer.None)], IsListed: false);

    private static void DeriveBall(Part part, Ball ball, int revision, TraitTable table)
    {
        var pocket = Local(part.Name, ball.Pocket.Name);
        table.Yes(BallIn(part.Name, pocket), revision);
        table.Size(BallIn(part.Name, pocket, sized: true), revision, ball.Diameter is { } diameter ? new BenchSize(diameter.Millimetres, null) : null);
        foreach (var seat in ball.Seats.OfType<Seat.InCasting>()) DeriveHole(part, TraitKind.Seat, ball.Pocket, seat.To, seat.Shape, revision, table);
    }

    /// <summary>Loose balls do not show where they lay; how many there are of each size does.</summary>
    private static void CountBalls(Part part, int revision, TraitTable table)
    {
        table.Count(new Trait(part.Name, new TraitKey(TraitKind.BallCount, "", false), "balls", Means.Count) { One = "ball" }, revision, part.Revisions[revision].Balls.Length);
        var sizes = part.Revisions.SelectMany(any => any.Balls).Select(ball => ball.Diameter).OfType<Quantities.Length>()
            .Select(diameter => new BenchSize(diameter.Millimetres, null)).Distinct().OrderBy(size => size.Width);
        var balls = part.Revisions[revision].Balls;
        foreach (var size in sizes)
        {
            var trait = BallsOf(part.Name, size);
            if (balls.Any(ball => ball.Diameter is null)) table.Maybe(trait, revision);
            else table.Count(trait, revision, balls.Count(ball => ball.Diameter!.Value.Millimetres == size.Width));
        }
    }
}

internal sealed partial class Unseen
{
    public void Balls(Revision revision)
    {
        foreach (var ball in revision.Balls)
            Add($"ball {ball.Name}", Join([ball.Pocket.Name.ToString(), .. ball.Seats.Select(seat => Of(seat)), Of(ball.Lift?.Millimetres)]));
    }

    private static string Of(Seat seat) => seat switch
    {
        Seat.AtLocation at => $"{at.Joint}@{at.Location}",
        Seat.InCasting inside => $"{inside.To.Name} {Of(inside.Shape)}",
        _ => "",
    };
}
