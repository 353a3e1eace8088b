using Circuits.Findings;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A joint's openings as nodes of the draft.</summary>
/// <param name="Stack">The joint laid together.</param>
/// <param name="FirstNode">The node of the first opening; those of the others, and of the meetings, come after it.</param>
/// <param name="FirstEdge">The edge of the first contact; those of the others come after it, until edges are dropped.</param>
internal sealed record DraftedJoint(StackedJoint Stack, int FirstNode, int FirstEdge)
{
    /// <summary>The node of an opening.</summary>
    public int NodeOfOpening(int number) => FirstNode + number;

    /// <summary>The node of a contact's end.</summary>
    public int NodeOf(Draft draft, StackEnd end) =>
        end.IsPassage ? draft.Passages[end.Passage] : end.Opening >= 0 ? NodeOfOpening(end.Opening) : FirstNode + Stack.Openings.Length + end.Meeting;
}

/// <summary>Adds a joint's openings, contacts and blanks to the draft.</summary>
internal static class JointDrafter
{
    private static readonly Phrase FaceToFace = Phrase.Of($"face to face");

    public static DraftedJoint Add(Draft draft, StackedJoint stack)
    {
        var joint = new DraftedJoint(stack, draft.Nodes.Count, draft.Edges.Count);
        draft.AddNodes(stack, stack.Openings.Length + stack.Meetings.Length, (index, i) =>
        {
            if (i < stack.Openings.Length) return new Node(index, NodeKind.Opening, stack.Openings[i].Element, null, stack.Openings[i].Place);
            var location = stack.Meetings[i - stack.Openings.Length];
            return new Node(index, NodeKind.Opening, $"{stack.Joint.Name}@{location}", null, stack.Joint.Place);
        });
        foreach (var contact in stack.Contacts)
        {
            if (contact.A.IsPassage && contact.B.IsPassage)
                AddFaceToFace(draft, joint, contact);
            else
                AddContact(draft, joint, contact);
        }

        foreach (var blank in stack.Blanks)
            draft.AddBlank(blank);
        return joint;
    }

    private static void AddFaceToFace(Draft draft, DraftedJoint joint, StackContact contact)
    {
        var window = contact.Via < 0 ? null : joint.Stack.Openings[contact.Via];
        draft.Edges.Add(new Edge
        {
            Kind = LinkKind.Opening,
            A = draft.Passages[contact.A.Passage],
            B = draft.Passages[contact.B.Passage],
            Area = double.PositiveInfinity,
            Element = window?.Element ?? $"{joint.Stack.Joint.Name}@{contact.Location}",
            Part = window?.Part ?? contact.A.Passage.Part,
            Revision = window?.Revision ?? "",
            Detail = window is null ? FaceToFace : draft.Words(window.Shape),
            Place = window?.Place ?? joint.Stack.Joint.Place,
        });
    }

    /// <summary>
    /// Each contact of an opening carries the area times the root of two, so that any way through it, in by one contact
    /// and out by another, has just the opening's area.
    /// </summary>
    private static void AddContact(Draft draft, DraftedJoint joint, StackContact contact)
    {
        var opening = joint.Stack.Openings[Math.Max(contact.A.Opening, contact.B.Opening)];
        draft.Edges.Add(new Edge
        {
            Kind = LinkKind.Opening,
            A = joint.NodeOf(draft, contact.A),
            B = joint.NodeOf(draft, contact.B),
            Area = opening.SquareMillimetres * Math.Sqrt(2),
            Element = opening.Element,
            Part = opening.Part,
            Revision = opening.Revision,
            Detail = draft.Words(opening.Shape),
            Place = opening.Place,
            Shape = opening.Shape as Shape.Slot,
        });
    }
}
