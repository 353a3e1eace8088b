using Circuits.Networks;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Clutches(Network network)
    {
        foreach (var clutch in network.Clutches)
        {
            // What the answer takes of the model's clutch stands beside it; in every assembly of a unit the clutches are the same ones.
            var (_, chamber, releaseChamber, releaseShare, millilitres) = clutch;
            bytes.Add(chamber);
            bytes.Add(releaseChamber);
            bytes.Add(releaseShare);
            bytes.Add(millilitres);
        }
    }
}
