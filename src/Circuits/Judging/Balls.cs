using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Balls(Network network)
    {
        foreach (var ball in network.Balls)
        {
            // No answer names it; its links say which they are; and they have what it leaves open.
            var (_, pocket, seats, _) = ball;
            bytes.Add(pocket);
            bytes.Add(seats.Length);
        }
    }
}

internal sealed partial class PositionReports
{
    public void Balls(GearSolution state)
    {
        for (var i = 0; i < state.Network.Balls.Length; i++)
        {
            var ball = state.Network.Balls[i];
            Stand stand = ball.Seats.IsEmpty ? new Stand.Simple(StandKind.SealsNothing)
                : state.Balls[i] < 0 ? new Stand.Simple(StandKind.Open)
                : new Stand.OnSeat(state.Network.Links[ball.Seats[state.Balls[i]]].Element);
            Add(PositionKind.Ball, ball.Name, stand, ball.Source.Place);
        }
    }
}
