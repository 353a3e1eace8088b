using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

public sealed partial class Plan
{
    void IElementKinds<Network>.Accumulators(Network network)
    {
        foreach (var accumulator in network.Accumulators)
            Compliance[CellOf[accumulator.Node]] += accumulator.Millilitres;
    }
}
