using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

public sealed partial class Plan
{
    void IElementKinds<Network>.Clutches(Network network)
    {
        foreach (var clutch in network.Clutches)
        {
            if (clutch.Chamber >= 0) Compliance[CellOf[clutch.Chamber]] += clutch.Millilitres;
            if (clutch.ReleaseChamber >= 0) Compliance[CellOf[clutch.ReleaseChamber]] += clutch.Millilitres * clutch.ReleaseShare;
        }
    }
}
