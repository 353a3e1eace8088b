using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>A ball, with the seats that it can close.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Pocket">The node that it lies in.</param>
/// <param name="Seats">The links that it can close, pocket side first; may be empty when no seat seals.</param>
/// <param name="Source">The model's ball.</param>
public sealed record BallElement(string Name, int Pocket, ImmutableArray<int> Seats, Ball Source);

public sealed partial class Network
{
    /// <summary>Balls.</summary>
    public required ImmutableArray<BallElement> Balls { get; init; }
}

/// <summary>A ball while the network is being drafted: which seats it can close is known only once the sheets are laid.</summary>
internal sealed record DraftBall(string Name, int Pocket, Ball Source)
{
    public int SeatCount { get; set; }

    /// <summary>The ball, once its seats have numbers.</summary>
    public BallElement Numbered(int[] seats, NewNumbers numbers) => new(Name, numbers[Pocket], [.. seats], Source);
}

internal sealed partial class Draft
{
    public List<DraftBall> Balls { get; } = [];
}

/// <summary>Puts the balls into their pockets, and finds out which seats they can close.</summary>
internal static class BallDrafter
{
    public static void Add(Draft draft)
    {
        foreach (var (part, revision) in draft.Parts)
        {
            foreach (var ball in revision.Balls)
                AddBall(draft, part, revision, ball);
        }
    }

    private static void AddBall(Draft draft, Part part, Revision revision, Ball ball)
    {
        var name = $"{part.Name}.{ball.Name}";
        if (!draft.Passages.TryGetValue(ball.Pocket.Name, out var pocket))
        {
            draft.Findings.Add(BallWithoutPocket.Rule.At(
                ball.Place, $"ball {name} has no pocket: this assembly has no passage {ball.Pocket.Name}"));
            return;
        }

        if (ball.Diameter is null)
            draft.Assume($"assumed ball {name} to be larger than its seats: no diameter given", ball.Place);
        var drafted = new DraftBall(name, pocket, ball);
        draft.Balls.Add(drafted);
        var number = draft.Balls.Count - 1;
        foreach (var seat in ball.Seats)
        {
            var closes = seat switch
            {
                Seat.InCasting inside => SeatInCasting(draft, part, revision, drafted, inside, number),
                Seat.AtLocation at => SeatAtLocation(draft, drafted, at, number),
                _ => false,
            };
            if (closes) drafted.SeatCount++;
        }
    }

    private static bool SeatInCasting(
        Draft draft, Part part, Revision revision, DraftBall ball, Seat.InCasting seat, int number)
    {
        if (!draft.Passages.TryGetValue(seat.To.Name, out var beyond) && !seat.To.Name.IsExhaust)
        {
            draft.Findings.Add(MissingName.Rule.At(
                seat.Place, $"ball {ball.Name} has a seat to {seat.To.Name}, which this assembly lacks"));
            return false;
        }

        var area = seat.Shape.Area?.SquareMillimetres;
        if (area is null)
            draft.Assume($"assumed {new Area(Defaults.OpeningArea)} for the seat of ball {ball.Name}: no size given", seat.Place);
        var seals = Seals(draft, ball, seat.Shape, $"its seat to {seat.To.Name}", seat.Place);
        draft.Edges.Add(new Edge
        {
            Kind = LinkKind.Opening,
            A = ball.Pocket,
            B = beyond,
            Area = (seals ? SeatLift.Left(ball.Source, seat.Shape) : null) ?? area ?? Defaults.OpeningArea,
            Gate = seals ? new Gate(GateKind.Ball, number, ball.SeatCount) : Gate.Open,
            Element = $"{part.Name}:{ball.Source.Pocket.Name.Passage}~{seat.To.Name.Passage}",
            Part = part.Name,
            Revision = revision.Name,
            Detail = draft.Words(seat.Shape),
            Place = seat.Place,
        });
        return seals;
    }

    private static bool SeatAtLocation(Draft draft, DraftBall ball, Seat.AtLocation seat, int number)
    {
        var joint = JointOf(draft, ball, seat);
        if (joint is null)
        {
            draft.Findings.Add(DividedPocket.Rule.At(
                seat.Place, $"seat {seat.Location} of ball {ball.Name} lies outside its pocket {ball.Source.Pocket.Name} in this assembly"));
            return false;
        }

        var fromAbove = joint.Stack.Joint.Upper.Name == ball.Source.Pocket.Name.Part;
        var sheets = joint.Stack.Joint.Sheets.Length;
        StackedOpening? tooWide = null;
        for (var step = 0; step < sheets; step++)
        {
            var sheet = fromAbove ? step : sheets - 1 - step;
            if (WidestAt(joint.Stack, sheet, seat.Location) is not { } here) return false;
            if (LetsThrough(here, ball.Source.Diameter?.Millimetres))
            {
                if (here.Shape is not null) tooWide = here;
                continue;
            }

            if (!Seals(draft, ball, here.Shape!, here.Element, here.Place)) return false;
            return Close(draft, joint, here, seat.Location, fromAbove, new Gate(GateKind.Ball, number, ball.SeatCount), SeatLift.Left(ball.Source, here.Shape));
        }

        if (tooWide is not null)
        {
            var size = ball.Source.Diameter is { } diameter ? Phrase.Of($" ({diameter})") : Phrase.Empty;
            draft.Findings.Add(BallFallsThrough.Rule.At(
                tooWide.Place, $"ball {ball.Name}{size} falls through {tooWide.Element} ({SizeText.Of(tooWide.Shape)})") with
            { Related = [new RelatedPlace(ball.Source.Place, $"the ball")] });
        }

        return false;
    }

    private static StackedOpening? WidestAt(StackedJoint stack, int sheet, string location)
    {
        StackedOpening? widest = null;
        foreach (var opening in stack.Openings)
        {
            if (opening.Sheet == sheet && (widest is null || opening.SquareMillimetres > widest.SquareMillimetres) && opening.Locations.Contains(location)) widest = opening;
        }

        return widest;
    }

    private static DraftedJoint? JointOf(Draft draft, DraftBall ball, Seat.AtLocation seat)
    {
        var (_, revision) = draft.Parts.First(pair => pair.Part.Name == ball.Source.Pocket.Name.Part);
        var pocket = revision.Passages.First(passage => passage.Name == ball.Source.Pocket.Name.Passage);
        var use = pocket.Locations.FirstOrDefault(
            location => location.Location == seat.Location && (seat.Joint is null || location.Joint == seat.Joint));
        return use.Joint is null ? null : draft.Joints.First(joint => joint.Stack.Joint.Name == use.Joint);
    }

    private static bool LetsThrough(StackedOpening opening, double? diameter) => opening.Shape switch
    {
        null => true,
        Shape.Hole hole => diameter is not null && hole.Diameter.Millimetres >= diameter,
        Shape.Slot slot => diameter is not null && slot.Width.Millimetres >= diameter,
        _ => false,
    };

    private static bool Seals(Draft draft, DraftBall ball, Shape shape, string where, Place place)
    {
        switch (shape)
        {
            case Shape.Unsized:
                return true;
            case Shape.Hole hole when ball.Source.Diameter is null || hole.Diameter.Millimetres < ball.Source.Diameter.Value.Millimetres:
                return true;
            case Shape.Hole:
                draft.Findings.Add(BallFallsThrough.Rule.At(
                    place, $"ball {ball.Name} falls through {where} ({SizeText.Of(shape)})") with
                { Related = [new RelatedPlace(ball.Source.Place, $"the ball")] });
                return false;
            default:
                draft.Findings.Add(SeatWillNotSeal.Rule.At(
                    place, $"ball {ball.Name} cannot close {where}: {SizeText.Of(shape)} is not a round hole") with
                { Related = [new RelatedPlace(ball.Source.Place, $"the ball")] });
                return false;
        }
    }

    /// <summary>
    /// Gates every contact by which oil comes to the seat from the pocket's side. Where the ball leaves less than the hole, the contact
    /// takes what is missing, so that in by it and out by another is what is left.
    /// </summary>
    private static bool Close(
        Draft draft, DraftedJoint joint, StackedOpening seat, string location, bool fromAbove, Gate gate, double? left)
    {
        var number = joint.Stack.Openings.IndexOf(seat);
        var node = joint.NodeOfOpening(number);
        var closed = false;
        for (var i = 0; i < joint.Stack.Contacts.Length; i++)
        {
            var contact = joint.Stack.Contacts[i];
            var (near, far) = fromAbove ? (contact.A, contact.B) : (contact.B, contact.A);
            if (far.Opening != number || !Meets(joint, near, location)) continue;
            var edge = draft.Edges[joint.FirstEdge + i];
            (edge.A, edge.B, edge.Gate) = (joint.NodeOf(draft, near), node, gate);
            if (left is { } area) edge.Area = 1 / Math.Sqrt((1 / (area * area)) - (1 / (2 * seat.SquareMillimetres * seat.SquareMillimetres)));
            closed = true;
        }

        return closed;
    }

    private static bool Meets(DraftedJoint joint, StackEnd near, string location) =>
        near.Meeting < 0 || joint.Stack.Meetings[near.Meeting] == location;
}
