using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

internal sealed partial class DiagramBuilder
{
    /// <summary>Openings, and every other link that is no port or seat.</summary>
    public void Openings(Network network) => In(Turn.Openings, () =>
    {
        var metal = new Dictionary<string, Symbol>();
        var screens = network.Screens.SelectMany(screen => new[] { screen.Name, $"{screen.Name}:bypass" }).ToHashSet();
        foreach (var link in network.Links)
        {
            if (grooves.Contains(link.A) || grooves.Contains(link.B)) continue;
            switch (link.Kind)
            {
                case LinkKind.Opening:
                case LinkKind.Restriction:
                case LinkKind.Leak:
                    AddHole(link);
                    break;
                case LinkKind.RegulatorPort or LinkKind.Metal when network.Stuck.Any(stuck => stuck.Name == link.Element) && !screens.Contains(link.Element):
                    AddBetween(SymbolKind.Stuck, link);
                    break;
                case LinkKind.Metal when stops.Contains(link.Element) && !screens.Contains(link.Element):
                    if (!metal.TryGetValue(link.Element, out var blank))
                        metal[link.Element] = blank = Add(SymbolKind.Metal, link.Element, link.Index, link.Detail);
                    Connect(blank, link.A, "", link.Index);
                    Connect(blank, link.B, "", link.Index);
                    break;
            }
        }
    });

    private void AddHole(Link link)
    {
        var (a, b) = (ofNode[link.A], ofNode[link.B]);
        if (a is not null && b is not null && (a.Kind == SymbolKind.Meeting || b.Kind == SymbolKind.Meeting) && link.Kind == LinkKind.Opening)
        {
            // An opening at which several passages meet is a symbol itself.
            var (passage, meeting) = a.Kind == SymbolKind.Meeting ? (b, a) : (a, b);
            var outer = new Port(passage, passage.Element, "");
            var inner = new Port(meeting, passage.Element, "");
            passage.Ports.Add(outer);
            meeting.Ports.Add(inner);
            diagram.Wires.Add(new Wire(outer, inner, passage.Element, link.Index));
            return;
        }

        AddBetween(
            link.Kind == LinkKind.Leak ? SymbolKind.Leak : double.IsInfinity(link.SquareMillimetres) ? SymbolKind.Joined : SymbolKind.Orifice, link);
    }

    private void AddBetween(SymbolKind kind, Link link)
    {
        var symbol = Add(kind, link.Element, link.Index, link.Detail);
        Connect(symbol, link.A, "a", link.Index);
        Connect(symbol, link.B, "b", link.Index);
    }
}
