using Circuits.Networks;

namespace Circuits.Solving.Flow;

internal sealed partial class FlowDrafter
{
    /// <summary>Openings, and every other link.</summary>
    public void Openings(Network network)
    {
        foreach (var link in network.Links)
        {
            if (link.Gate.Kind is GateKind.Shut or GateKind.Regulator || IsLineSpill(link)) continue;
            var (a, b) = (EndOf(link.A), EndOf(link.B));
            if (double.IsInfinity(link.SquareMillimetres) && link.Gate.Kind == GateKind.Open)
            {
                joined.Union(a, b);
                continue;
            }

            Add(Kind(link), a, b, link.SquareMillimetres, link.Gate.Element, link.Gate.Position, link.Index, Openers(link));
        }
    }

    /// <summary>The static answer lets a line regulator spill at all times; here its ports are elements of their own.</summary>
    private bool IsLineSpill(Link link) => link.Kind == LinkKind.RegulatorPort && link.Gate.Kind == GateKind.Open
        && network.Regulators.Any(regulator => regulator.Name == link.Element);

    private FlowKind Kind(Link link) => link.Gate.Kind switch
    {
        GateKind.Valve => FlowKind.SpoolPort,
        GateKind.Ball when network.Balls[link.Gate.Element].Seats.Length == 1 => FlowKind.CheckSeat,
        GateKind.Ball => FlowKind.TwoWaySeat,
        _ => OwnLaws.Has(link.Shape) ? FlowKind.Own : FlowKind.Orifice,
    };

    private int[] Openers(Link link)
    {
        if (link.Gate.Kind == GateKind.Valve) return Forces(network.Spools[link.Gate.Element]).Nodes;
        if (Kind(link) != FlowKind.TwoWaySeat) return [];
        return [.. network.Balls[link.Gate.Element].Seats.Select(seat => network.Links[seat].B)];
    }
}
