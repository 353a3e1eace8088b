using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Remedies;

/// <summary>What can be done on the bench without other parts: every plug, every hole, every ball, of one assembly.</summary>
internal sealed class BenchCandidates
{
    private readonly Assembly assembly;
    private readonly ImmutableArray<SheetLocation> locations;

    public BenchCandidates(Assembly assembly)
    {
        this.assembly = assembly;
        locations = [.. new Locations(assembly).All()];
    }

    /// <summary>Every opening closed, once each; a gasket is paper and is left alone.</summary>
    public IEnumerable<PlugOpening> Plugs() => locations
        .Where(at => !at.Revision.OpenElsewhere)
        .SelectMany(at => at.Openings.Select(opening => new PlugOpening(at.Sheet.Name, [.. opening.At.Select(use => use.Name)], true, opening.Place)))
        .DistinctBy(plug => plug.Element);

    /// <summary>Where a round hole can be given: on metal, or in place of a single opening.</summary>
    public IEnumerable<SheetLocation> HoleLocations() => locations
        .Where(at => !at.Revision.OpenElsewhere && at.Openings is [] or [{ At.Length: 1 }] && Opens(at));

    /// <summary>The hole at a location.</summary>
    public static SetHole Hole(SheetLocation at, Shape.Hole size) => new(
        at.Sheet.Name, at.Id, size, at.Openings.IsEmpty ? null : at.Openings[0].Shape, at.Openings.IsEmpty ? at.Revision.Place : at.Openings[0].Place);

    /// <summary>The sizes that other revisions of the sheet have at a location.</summary>
    public static IEnumerable<Shape.Hole> KnownSizes(SheetLocation at) => at.Sheet.Revisions
        .SelectMany(revision => revision.Openings)
        .Where(opening => opening.At is [var only] && only.Name == at.Id).Select(opening => opening.Shape).OfType<Shape.Hole>()
        .Where(hole => at.Openings is not [{ Shape: Shape.Hole here }] || here.Diameter != hole.Diameter)
        .DistinctBy(hole => hole.Diameter);

    /// <summary>
    /// Balls left out, balls of sizes that some revision has in that pocket, and balls in pockets in which another revision
    /// has one: a pocket must be cast for its ball.
    /// </summary>
    public IEnumerable<Change> Balls()
    {
        var known = assembly.Unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Balls).ToList();
        var here = assembly.Unit.Parts.Zip(assembly.Revisions).SelectMany(pair => pair.Second.Balls.Select(ball => (Part: pair.First.Name, Ball: ball))).ToList();
        foreach (var (part, ball) in here)
        {
            yield return new DropBall(part, ball);
            foreach (var size in Sizes(ball.Pocket.Name).Where(size => size != ball.Diameter)) yield return new ResizeBall(part, ball, size);
        }

        foreach (var (part, revision) in assembly.Unit.Parts.Zip(assembly.Revisions))
        {
            foreach (var passage in revision.Passages)
            {
                var pocket = new PassageName(part.Name, passage.Name);
                if (here.Exists(pair => pair.Ball.Pocket.Name == pocket)) continue;
                var seats = BallTargets.KnownSeats(assembly.Unit, pocket);
                if (seats.IsEmpty) continue;
                foreach (var size in Sizes(pocket))
                    yield return new InsertBall(part.Name, new Ball($"{passage.Name}-ball", new PassageUse(pocket, passage.Place), seats, size, passage.Place));
            }
        }

        IEnumerable<Length> Sizes(PassageName pocket) =>
            known.Where(ball => ball.Pocket.Name == pocket).Select(ball => ball.Diameter).OfType<Length>().Distinct();
    }

    /// <summary>
    /// The matched sets whose sheet has the same at every location that the changes touch, and whose balls are the same in the
    /// pockets that they touch.
    /// </summary>
    public ImmutableArray<string> AsIn(IEnumerable<Change> changes) =>
    [
        .. assembly.Unit.Matched.Where(set => changes.All(change => HasSo(Assembly.Of(assembly.Unit, set), change))).Select(set => set.Name),
    ];

    /// <summary>Metal opposite metal needs no hole: some passage must lie at the location, above or below.</summary>
    private bool Opens(SheetLocation at) => assembly.Unit.Parts.Zip(assembly.Revisions)
        .Where(pair => pair.First.Name == at.Joint.Upper.Name || pair.First.Name == at.Joint.Lower.Name)
        .All(pair => pair.Second.Passages.Any(passage => passage.Locations.Any(use => use.Joint == at.Joint.Name && use.Location == at.Id)))
        || !at.Openings.IsEmpty;

    private static bool HasSo(Assembly set, Change change)
    {
        var revision = set.Revisions[set.Unit.Parts.IndexOf(set.Unit.FindPart(change.Part)!)];
        var balls = set.Revisions.SelectMany(each => each.Balls).ToList();
        return change switch
        {
            PlugOpening plug => plug.Locations.All(at => revision.Openings.All(opening => opening.At.All(use => use.Name != at))),
            SetHole hole => revision.Openings.Any(opening =>
                opening is { At: [var only], Shape: Shape.Hole there } && only.Name == hole.Location
                && Math.Abs(there.Diameter.Millimetres - hole.Hole.Diameter.Millimetres) < 1e-9),
            DropBall drop => !balls.Exists(ball => ball.Pocket.Name == drop.Ball.Pocket.Name),
            ResizeBall resize => balls.Exists(ball => ball.Pocket.Name == resize.Ball.Pocket.Name && ball.Diameter == resize.Diameter),
            InsertBall insert => balls.Exists(ball => ball.Pocket.Name == insert.Ball.Pocket.Name && ball.Diameter == insert.Ball.Diameter),
            _ => false,
        };
    }
}
