using Circuits.Laws;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>What a ball that its pocket holds near its seat leaves of the hole.</summary>
internal static class SeatLift
{
    /// <summary>What a ball that its pocket holds near its seat leaves of a hole, mm2; null where it leaves it free, or a size is missing.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="hole">The seat's hole, smaller than the ball.</param>
    public static double? Left(Ball ball, Shape? hole) =>
        ball is { Lift: { } lift, Diameter: { } diameter } && hole is Shape.Hole { Diameter: var seat }
            && BallSeat.Open(lift.Millimetres, diameter.Millimetres, seat.Millimetres) is var open && open < seat.HoleArea.SquareMillimetres
            ? open
            : null;
}
