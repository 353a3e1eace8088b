using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A joint's openings as nodes of the draft.</summary>
/// <param name="Stack">The joint laid together.</param>
/// <param name="OpeningNodes">The node of each opening.</param>
internal sealed record DraftedJoint(StackedJoint Stack, int[] OpeningNodes);

/// <summary>Adds a joint's openings, contacts and blanks to the draft.</summary>
internal static class JointDrafter
{
    public static DraftedJoint Add(Draft draft, StackedJoint stack)
    {
        var nodes = stack.Openings
            .Select(opening => draft.AddNode(NodeKind.Opening, opening.Element, null, opening.Place)).ToArray();
        foreach (var contact in stack.Contacts)
        {
            if (contact.A.Opening < 0 && contact.B.Opening < 0)
                AddFaceToFace(draft, stack, contact);
            else
                AddContact(draft, stack, nodes, contact);
        }

        foreach (var blank in stack.Blanks)
            draft.AddBlank(blank);
        return new DraftedJoint(stack, nodes);
    }

    public static int NodeOf(Draft draft, int[] openingNodes, StackEnd end) =>
        end.Opening < 0 ? draft.Passages[end.Passage] : openingNodes[end.Opening];

    private static void AddFaceToFace(Draft draft, StackedJoint stack, StackContact contact)
    {
        draft.Edges.Add(new Edge
        {
            Kind = LinkKind.Opening,
            A = draft.Passages[contact.A.Passage],
            B = draft.Passages[contact.B.Passage],
            Area = double.PositiveInfinity,
            Element = $"{stack.Joint.Name}@{contact.Location}",
            Part = contact.A.Passage.Part,
            Revision = "",
            Detail = "face to face",
            Place = stack.Joint.Place,
        });
    }

    /// <summary>
    /// Each contact of an opening carries the area times the root of two, so that any way through it, in by one contact
    /// and out by another, has just the opening's area.
    /// </summary>
    private static void AddContact(Draft draft, StackedJoint stack, int[] nodes, StackContact contact)
    {
        var openings = new[] { contact.A.Opening, contact.B.Opening }
            .Where(number => number >= 0).Select(number => stack.Openings[number]).ToList();
        var narrowest = openings.MinBy(opening => opening.SquareMillimetres)!;
        var resistance = openings.Sum(opening => 1 / (2 * opening.SquareMillimetres * opening.SquareMillimetres));
        draft.Edges.Add(new Edge
        {
            Kind = LinkKind.Opening,
            A = NodeOf(draft, nodes, contact.A),
            B = NodeOf(draft, nodes, contact.B),
            Area = 1 / Math.Sqrt(resistance),
            Element = narrowest.Element,
            Part = narrowest.Part,
            Revision = narrowest.Revision,
            Detail = SizeText.Of(narrowest.Shape),
            Place = narrowest.Place,
        });
    }
}
