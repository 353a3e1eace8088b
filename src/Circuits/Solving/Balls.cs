using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A ball's seat: the link it closes, and the cell beyond it.</summary>
internal readonly record struct PlanSeat(int Link, int Beyond);

/// <summary>A ball, by cells.</summary>
internal sealed record PlanBall(int Pocket, PlanSeat[] Seats);

public sealed partial class Plan
{
    internal PlanBall[] Balls { get; private set; } = [];

    void IElementKinds<Network>.Balls(Network network) => Balls = [.. network.Balls.Select(PlanBallOf)];

    private PlanBall PlanBallOf(BallElement ball)
    {
        // A seat whose two sides are joined by something that does not restrict has nothing to keep apart.
        var seats = ball.Seats.Select(index => new PlanSeat(LinkOf[index], CellOf[Network.Links[index].B]));
        return new PlanBall(CellOf[ball.Pocket], [.. seats]);
    }
}

internal sealed partial class Mechanics
{
    /// <summary>Pressures closer than this, kPa, count as equal; a ball then stays where it is.</summary>
    private const double Exact = 1e-3;

    /// <summary>
    /// Whether a ball stays where it is even at a difference over which flow lets it stand midway (<see cref="Flow.FlowDefaults.BallBand"/>): for those that turn over
    /// and back as the oil that passes them changes it.
    /// </summary>
    public bool Lenient { get; set; }

    private double PressureTolerance => Lenient ? Flow.FlowDefaults.BallBand : Exact;

    /// <summary>The seat that the pressures ask a ball to close, or -1.</summary>
    public int WantedSeat(int ball, int seat)
    {
        var element = plan.Balls[ball];
        var pocket = field.Pressure[element.Pocket];
        if (element.Seats.Length == 0) return -1;
        if (element.Seats.Length == 1)
        {
            var beyond = field.Pressure[element.Seats[0].Beyond];
            if (pocket > beyond + PressureTolerance) return 0;
            // Level oil does not press the ball down; without oil it rests where it lies.
            return beyond > pocket + PressureTolerance || pocket > PressureTolerance ? -1 : seat;
        }

        // The pocket says nothing: a pocket that drains lies below both its feeds.
        var (closed, open) = (field.Pressure[element.Seats[seat].Beyond], field.Pressure[element.Seats[1 - seat].Beyond]);
        return closed > open + PressureTolerance ? 1 - seat : seat;
    }

    /// <summary>
    /// Whether an open check ball stands in oil that is level on both sides. Which way the oil came must then be tried
    /// with the seat closed: oil that would leave the pocket would have closed it.
    /// </summary>
    public bool NeedsTrial(int ball, int seat)
    {
        var element = plan.Balls[ball];
        if (element.Seats.Length != 1 || seat >= 0) return false;
        var pocket = field.Pressure[element.Pocket];
        return pocket > PressureTolerance && Math.Abs(pocket - field.Pressure[element.Seats[0].Beyond]) <= PressureTolerance;
    }
}
