using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

internal sealed partial class NetworkPieces
{
    public void Balls(Network network)
    {
        foreach (var ball in network.Balls)
            pieces[FormattableString.Invariant($"{ball.Name} {Name(ball.Pocket)} {ball.Seats.Length}")] = Names([ball.Pocket]);
    }
}
