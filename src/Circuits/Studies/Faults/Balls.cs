using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    /// <summary>What falls through a seat is this part of the seat's diameter where the unit has no such ball.</summary>
    private const double FallsThrough = 0.9;

    /// <summary>Balls left out, too many, or of another size; and their seats inside castings, plugged or worn.</summary>
    public void Balls(Assembly assembly)
    {
        var balls = Fitted(assembly).SelectMany(fitted => fitted.Revision.Balls.Select(ball => (Part: fitted.Part.Name, Ball: ball))).ToList();
        foreach (var (part, ball) in balls)
        {
            Add(new Fault(FaultKind.BallLeftOut, $"{part}.{ball.Name}", Phrase.Of($"ball {part}.{ball.Name} left out"), ball.Place, 0, [new DropBall(part, ball)]));
            foreach (var diameter in WrongSizes(assembly, ball)) Add(WrongSize(part, ball, diameter));
            foreach (var seat in ball.Seats.OfType<Seat.InCasting>()) AddSeat(assembly, part, ball, seat);
        }

        AddAll(Misplaced(assembly, [.. balls.Select(pair => pair.Ball)]));
    }

    private static Fault WrongSize(string part, Ball ball, Length diameter) => new(
        FaultKind.BallWrongSize, FormattableString.Invariant($"{part}.{ball.Name}={diameter.Millimetres:0.##}mm"),
        Phrase.Of($"a ball of {diameter} in place of {part}.{ball.Name}{(ball.Diameter is { } was ? Phrase.Of($" ({was})") : null)}"), ball.Place, 0,
        [new ResizeBall(part, ball, diameter)]);

    private void AddSeat(Assembly assembly, string part, Ball ball, Seat.InCasting seat)
    {
        var what = Phrase.Of($"the seat of ball {part}.{ball.Name} to {seat.To.Name}");
        var plug = new SetSeat(part, ball, seat, null);
        Add(new Fault(FaultKind.HolePlugged, plug.Element, Phrase.Of($"{what} plugged"), seat.Place, 0, [plug]), last: true);
        if (seat.Shape is not Shape.Hole hole) return;
        var wear = new SetSeat(part, ball, seat, Wider(assembly, hole));
        Add(Worn(wear.Element, what, wear.Hole!, wear), last: true);
    }

    /// <summary>The other sizes of the unit's loose balls; and one that falls through, where none of them does.</summary>
    private static IEnumerable<Length> WrongSizes(Assembly assembly, Ball ball)
    {
        if (ball.Diameter is not { } right) yield break;
        var isCaptive = ball.Seats.All(seat => seat is Seat.InCasting);
        ImmutableArray<Length> known = isCaptive ? [] : [.. LooseSizes(assembly).Where(size => size != right)];
        foreach (var size in known) yield return size;
        var seats = ball.Seats.Select(seat => SeatSize(assembly, ball, seat)).OfType<double>().ToList();
        if (seats.Count == 0) yield break;
        var widest = seats.Max();
        if (widest < right.Millimetres && !known.Any(size => size.Millimetres <= widest)) yield return new Length(FallsThrough * widest);
    }

    /// <summary>Diameters of the balls of every revision that lie between castings, smallest first.</summary>
    private static ImmutableArray<Length> LooseSizes(Assembly assembly) =>
    [
        .. assembly.Unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Balls)
            .Where(ball => ball.Seats.Any(seat => seat is Seat.AtLocation)).Select(ball => ball.Diameter).OfType<Length>()
            .Distinct().OrderBy(size => size.Millimetres),
    ];

    private static double? SeatSize(Assembly assembly, Ball ball, Seat seat) => seat switch
    {
        Seat.InCasting { Shape: Shape.Hole hole } => hole.Diameter.Millimetres,
        Seat.AtLocation at => UseOf(assembly, ball.Pocket.Name, at) is { } use ? NearestHole(assembly, ball.Pocket.Name.Part, use)?.Diameter.Millimetres : null,
        _ => null,
    };

    private static LocationUse? UseOf(Assembly assembly, PassageName pocket, Seat.AtLocation seat)
    {
        var uses = FaultLibrary.Fitted(assembly).Where(pair => pair.Part.Name == pocket.Part)
            .SelectMany(pair => pair.Revision.Passages).Where(passage => passage.Name == pocket.Passage)
            .SelectMany(passage => passage.Locations).Where(use => use.Location == seat.Location && (seat.Joint is null || use.Joint == seat.Joint)).ToList();
        return uses.Count > 0 ? uses[0] : null;
    }

    /// <summary>The round hole that a ball in a casting meets first at a location; null for metal, a slot, or an opening that it drops into.</summary>
    private static Shape.Hole? NearestHole(Assembly assembly, string casting, LocationUse use)
    {
        var joint = assembly.Unit.Joints.First(candidate => candidate.Name == use.Joint);
        var sheets = joint.Upper.Name == casting ? joint.Sheets : [.. joint.Sheets.Reverse()];
        foreach (var sheet in sheets)
        {
            var revision = assembly.Revisions[assembly.Unit.Parts.IndexOf(assembly.Unit.FindPart(sheet.Name)!)];
            var here = revision.Openings.Where(opening => opening.At.Any(at => at.Name == use.Location)).ToList();
            if (here is [{ At.Length: 1, Shape: Shape.Hole hole }]) return hole;
            if (here.Count > 0 || !revision.OpenElsewhere || revision.OpenExcept.Any(except => except.Name == use.Location)) return null;
        }

        return null;
    }

    /// <summary>
    /// A ball too many: in a pocket where another revision has one, with the seats that it has there; and over every hole that the smallest
    /// ball that does not fall through could close. Whether a track is wide enough for it, the file does not say.
    /// </summary>
    private static IEnumerable<Fault> Misplaced(Assembly assembly, ImmutableArray<Ball> fitted)
    {
        var sizes = LooseSizes(assembly);
        if (sizes.IsEmpty) yield break;
        var taken = fitted.Select(ball => ball.Pocket.Name).ToHashSet();
        var seats = fitted.SelectMany(ball => ball.Seats.OfType<Seat.AtLocation>().Select(seat => UseOf(assembly, ball.Pocket.Name, seat)))
            .OfType<LocationUse>().Select(use => (use.Joint, use.Location)).ToHashSet();
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var passage in revision.Passages)
            {
                var pocket = new PassageName(part.Name, passage.Name);
                if (taken.Contains(pocket)) continue;
                var known = BallTargets.KnownSeats(assembly.Unit, pocket);
                if (!known.IsEmpty && KnownBall(assembly.Unit, pocket) is { Diameter: { } usual })
                    yield return Extra(pocket, passage, known, usual, "");
                var ends = known.OfType<Seat.AtLocation>().Select(seat => seat.Location).ToHashSet();
                foreach (var use in passage.Locations)
                {
                    if (ends.Contains(use.Location) || seats.Contains((use.Joint, use.Location))) continue;
                    if (NearestHole(assembly, part.Name, use) is not { } hole) continue;
                    foreach (var size in sizes.Where(size => size.Millimetres > hole.Diameter.Millimetres).Take(1))
                        yield return Extra(pocket, passage, [new Seat.AtLocation(use.Joint, use.Location, use.Place)], size, $"@{use.Location}");
                }
            }
        }
    }

    private static Ball? KnownBall(Unit unit, PassageName pocket) => unit.Parts
        .SelectMany(part => part.Revisions).SelectMany(revision => revision.Balls).FirstOrDefault(ball => ball.Pocket.Name == pocket);

    private static Fault Extra(PassageName pocket, Passage passage, ImmutableArray<Seat> seats, Length size, string at)
    {
        var ball = new Ball($"{pocket.Passage}-extra-ball", new PassageUse(pocket, passage.Place), seats, size, passage.Place);
        return new Fault(
            FaultKind.BallMisplaced, $"{pocket}{at}", Phrase.Of($"a ball of {size} too many in {pocket}{(at.Length > 0 ? Phrase.Of($", over the hole at {at[1..]}") : null)}"),
            passage.Place, 0, [new InsertBall(pocket.Part, ball)]);
    }
}
