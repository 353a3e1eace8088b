using Circuits.Findings;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>Lays passages, and the walls between them.</summary>
internal static class PassageDrafter
{
    /// <summary>A node for every passage, after the sump.</summary>
    public static void Add(Draft draft)
    {
        draft.AddNode(NodeKind.Exhaust, "exhaust", null, Place.None);
        foreach (var (part, revision) in draft.Parts)
        {
            var first = draft.Nodes.Count;
            draft.AddNodes(revision, revision.Passages.Length, (index, i) =>
            {
                var passage = revision.Passages[i];
                return new Node(index, NodeKind.Passage, new PassageName(part.Name, passage.Name).ToString(), passage.Circuit, passage.Place);
            });
            for (var i = 0; i < revision.Passages.Length; i++) draft.Passages[new PassageName(part.Name, revision.Passages[i].Name)] = first + i;
        }
    }

    /// <summary>What keeps a part's passages apart.</summary>
    public static void AddWalls(Draft draft)
    {
        foreach (var (part, revision) in draft.Parts)
        {
            foreach (var wall in Walls.Of(part, revision))
                draft.AddBlank(wall);
        }
    }
}
