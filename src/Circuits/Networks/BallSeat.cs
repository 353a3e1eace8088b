using Circuits.Model;

namespace Circuits.Networks;

/// <summary>
/// A ball lifted off a sharp round seat. With seat radius rs, ball radius R and l the distance from the ball's centre to the edge,
/// A = pi rs l (1 - (R / l)^2): the frustum from the edge towards the centre, at most the hole.
/// Source: own geometry; the least frustum lies 0.4 % lower at an eighth of the seat's diameter (worked out by search).
/// </summary>
internal static class BallSeat
{
    /// <summary>Open area, mm2.</summary>
    /// <param name="lift">mm; zero or less is shut.</param>
    /// <param name="ballDiameter">mm, above the seat's.</param>
    /// <param name="seatDiameter">mm, above zero.</param>
    public static double Open(double lift, double ballDiameter, double seatDiameter)
    {
        if (!(lift > 0)) return 0;
        var (ball, seat) = (ballDiameter / 2, seatDiameter / 2);
        var height = Math.Sqrt((ball * ball) - (seat * seat)) + lift;
        var edge = Math.Sqrt((seat * seat) + (height * height));
        var ratio = ball / edge;
        return Math.Min(Math.PI * seat * edge * (1 - (ratio * ratio)), Math.PI * seat * seat);
    }

    /// <summary>What a ball that its pocket holds near its seat leaves of a hole, mm2; null where it leaves it free, or a size is missing.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="hole">The seat's hole, smaller than the ball.</param>
    public static double? Left(Ball ball, Shape? hole) =>
        ball is { Lift: { } lift, Diameter: { } diameter } && hole is Shape.Hole { Diameter: var seat }
            && Open(lift.Millimetres, diameter.Millimetres, seat.Millimetres) is var open && open < seat.HoleArea.SquareMillimetres
            ? open
            : null;
}
