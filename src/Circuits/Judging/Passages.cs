using Circuits.Networks;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Passages(Network network)
    {
        bytes.Add(network.Nodes.Length);
        foreach (var node in network.Nodes)
        {
            // Its number is its place here; where the file writes it is nobody's business.
            var (_, kind, name, circuit, _) = node;
            bytes.Add((int)kind);
            bytes.Add(names.Of(name));
            bytes.Add(circuit is null ? -1 : names.Of(circuit));
        }
    }
}
