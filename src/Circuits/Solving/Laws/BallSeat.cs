namespace Circuits.Solving.Laws;

/// <summary>
/// A ball lifted off a sharp round seat. With seat radius rs, ball radius R and l the distance from the ball's centre to the edge,
/// A = pi rs l (1 - (R / l)^2): the frustum from the edge towards the centre, at most the hole.
/// Source: own geometry; the least frustum lies 0.4 % lower at an eighth of the seat's diameter (worked out by search).
/// </summary>
internal static class BallSeat
{
    /// <summary>Open area by lift.</summary>
    /// <param name="lift">m; zero or less is shut.</param>
    /// <param name="ballDiameter">m, above the seat's.</param>
    /// <param name="seatDiameter">m, above zero.</param>
    public static OpenArea Open(double lift, double ballDiameter, double seatDiameter)
    {
        if (!(lift > 0)) return default;
        var (ball, seat) = (ballDiameter / 2, seatDiameter / 2);
        var height = Math.Sqrt((ball * ball) - (seat * seat)) + lift;
        var edge = Math.Sqrt((seat * seat) + (height * height));
        var ratio = ball / edge;
        return new OpenArea(Math.PI * seat * edge * (1 - (ratio * ratio)), Math.PI * seat * (1 + (ratio * ratio)) * height / edge)
            .AtMost(Math.PI * seat * seat);
    }

    /// <summary>The pressure at which a ball leaves its seat, Pa.</summary>
    /// <param name="force">What holds it there, N.</param>
    /// <param name="seatDiameter">m, above zero.</param>
    public static double Cracking(double force, double seatDiameter) => force / (Math.PI / 4 * seatDiameter * seatDiameter);
}
