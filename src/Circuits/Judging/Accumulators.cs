using Circuits.Networks;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Accumulators(Network network)
    {
        foreach (var accumulator in network.Accumulators)
        {
            // No answer names it; its spring is for time.
            var (_, node, millilitres, _) = accumulator;
            bytes.Add(node);
            bytes.Add(millilitres);
        }
    }
}
