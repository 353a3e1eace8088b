namespace Circuits.Networks;

/// <summary>
/// Nodes that were made before, by what they are of: a part's revision, a joint laid together. Assemblies that share those
/// share the nodes too, as long as their numbers are the same. Not for use by several threads at once.
/// </summary>
internal sealed class NodeStock
{
    private readonly Dictionary<object, Node[]> made = new(ReferenceEqualityComparer.Instance);

    /// <summary>The nodes of something, numbered from a number on; null when there are none yet.</summary>
    public Node[]? Find(object owner, int first) =>
        made.TryGetValue(owner, out var nodes) && nodes.Length > 0 && nodes[0].Index == first ? nodes : null;

    /// <summary>Keeps nodes for the next assembly, in the place of those with other numbers.</summary>
    public void Keep(object owner, Node[] nodes) => made[owner] = nodes;
}
