namespace Circuits.Laws;

/// <summary>
/// A ball lifted off a sharp round seat. With seat radius rs, ball radius R and l the distance from the ball's centre to the edge,
/// A = pi rs l (1 - (R / l)^2): the frustum from the edge towards the centre, at most the hole.
/// Source: own geometry; the least frustum lies 0.4 % lower at an eighth of the seat's diameter (worked out by search).
/// </summary>
internal static class BallSeat
{
    /// <summary>Open area, in the square of the unit of length that is used.</summary>
    /// <param name="lift">Zero or less is shut.</param>
    /// <param name="ballDiameter">Above the seat's.</param>
    /// <param name="seatDiameter">Above zero.</param>
    public static double Open(double lift, double ballDiameter, double seatDiameter)
    {
        if (!(lift > 0)) return 0;
        var (ball, seat) = (ballDiameter / 2, seatDiameter / 2);
        var height = Math.Sqrt((ball * ball) - (seat * seat)) + lift;
        var edge = Math.Sqrt((seat * seat) + (height * height));
        var ratio = ball / edge;
        return Math.Min(Math.PI * seat * edge * (1 - (ratio * ratio)), Math.PI * seat * seat);
    }
}
