using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Networks;

internal sealed partial class ElementDrafter
{
    private readonly List<int> joined = [];

    private void AddPorts(
        Owner owner, LinkKind kind, ImmutableArray<Port> ports, Gate gate, string element, Phrase detail, double share = 1)
    {
        foreach (var port in ports)
        {
            joined.Clear();
            foreach (var passage in port.Passages)
            {
                if (Resolve(passage, element, "joins") is >= 0 and var node && !joined.Contains(node)) joined.Add(node);
            }

            var area = share * (port.Area?.SquareMillimetres ?? Defaults.SpoolPortArea);
            if (port.Area is null)
                draft.Assume($"assumed {new Area(Defaults.SpoolPortArea)} for the ports of {element}: no area given", owner.PlaceOf(element, port.Place));
            if (joined.Count == 2)
            {
                AddEdge(owner, kind, joined[0], joined[1], area, gate, element, detail, port.Place);
                continue;
            }

            if (joined.Count < 2) continue;

            // Where more than two meet they meet in one groove, and any way through it has the port's area, as with a slot.
            var groove = draft.AddNode(NodeKind.Opening, element, null, port.Place);
            foreach (var node in joined)
                AddEdge(owner, kind, node, groove, area * Math.Sqrt(2), gate, element, detail, port.Place);
        }
    }
}
