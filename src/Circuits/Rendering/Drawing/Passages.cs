using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    /// <summary>Passages, and the openings between several; and the pump.</summary>
    public void Passages(Network network) => In(Turn.Passages, () =>
    {
        foreach (var link in network.Links.Where(link => link.Kind is LinkKind.ValvePort or LinkKind.LeverPort))
        {
            if (network.Nodes[link.A].Kind == NodeKind.Opening) grooves.Add(link.A);
            if (network.Nodes[link.B].Kind == NodeKind.Opening) grooves.Add(link.B);
        }

        foreach (var node in network.Nodes)
        {
            if (node.Kind == NodeKind.Passage) ofNode[node.Index] = Add(SymbolKind.Passage, node.Name, node.Index);
            else if (node.Kind == NodeKind.Opening && !grooves.Contains(node.Index))
                ofNode[node.Index] = Add(SymbolKind.Meeting, node.Name, node.Index, network.Links.First(link => link.A == node.Index || link.B == node.Index).Detail);
        }

        AddPump();
    });
}
