using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

internal sealed partial class FlowDrafter
{
    private readonly Dictionary<int, (double Length, double Section)> tracks = [];

    public void Passages(Network network)
    {
        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            foreach (var passage in revision.Passages)
            {
                if (passage is not { Length: { } length, Section: { } section }) continue;
                var node = network.FindNode(new PassageName(part.Name, passage.Name));
                if (node > 0) tracks[node] = (length.Millimetres / 1000, section.SquareMillimetres * SquareMetres);
            }
        }
    }

    /// <summary>
    /// Where a passage says how long it is, whatever touches it does so through half of that length: in by one opening and out
    /// by another is then the whole.
    /// </summary>
    private int EndOf(int node)
    {
        if (!tracks.TryGetValue(node, out var track)) return node;
        var arm = names.Count;
        joined.MakeSet(arm);
        names.Add(network.Nodes[node].Name);
        drafted.Add(new FlowElement
        {
            Kind = FlowKind.Track,
            A = node,
            B = arm,
            Area = track.Section,
            Length = track.Length / 2,
            DependsOn = [node, arm],
        });
        return arm;
    }
}

internal sealed partial class PistonDrafter
{
    public void Passages(Network network)
    {
        foreach (var node in network.Nodes)
        {
            if (node.Kind != NodeKind.Chamber) Volumes[cellOf[node.Index]] += 1e-6 * FlowDefaults.PassageVolume;
        }

        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            foreach (var passage in revision.Passages)
            {
                var node = network.FindNode(new PassageName(part.Name, passage.Name));
                if (node > 0 && Given(passage) is { } millilitres) Volumes[cellOf[node]] += 1e-6 * (millilitres - FlowDefaults.PassageVolume);
            }
        }
    }

    private static double? Given(Passage passage) =>
        passage.Volume?.Millilitres
        ?? (passage is { Length: { } length, Section: { } section } ? length.Millimetres * section.SquareMillimetres / 1000 : null);
}
