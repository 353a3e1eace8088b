using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

internal sealed partial class NetworkPieces
{
    public void Clutches(Network network)
    {
        foreach (var clutch in network.Clutches)
        {
            pieces[FormattableString.Invariant($"{clutch.Clutch.Name} {Name(clutch.Chamber)} {Name(clutch.ReleaseChamber)} {clutch.ReleaseShare}")] =
                Names([clutch.Chamber, clutch.ReleaseChamber]);
        }
    }
}
