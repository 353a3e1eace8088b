using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Looks up balls, and pockets that a ball may be put into.</summary>
internal sealed class BallTargets(Assembly assembly, TargetNames names, List<Finding> faults)
{
    private static IEnumerable<(string Name, Ball Item)> Of(Revision revision) => revision.Balls.Select(ball => (ball.Name, ball));

    public DropBall? Drop(ChangeRequest.Drop request) =>
        names.Find("ball", request.Name, request.Place, Of) is { } ball ? new DropBall(ball.Part, ball.Item) : null;

    /// <summary>A ball in another's place when a ball is named, a ball in a pocket when a passage is.</summary>
    public Change? Put(ChangeRequest.Ball request, HashSet<string> dropped)
    {
        var at = request.Target.IndexOf('@', StringComparison.Ordinal);
        var (target, seats) = at < 0 ? (request.Target, null) : (request.Target[..at], request.Target[(at + 1)..]);
        if (seats is null && names.All(Of).Any(ball => ball.FullName == target || ball.Name == target))
            return names.Find("ball", target, request.Place, Of) is { } ball ? new ResizeBall(ball.Part, ball.Item, request.Diameter) : null;
        var passages = names.All(PassagesOf);
        if (!passages.Any(passage => passage.FullName == target || passage.Name == target))
        {
            var balls = names.All(Of);
            faults.Add(TargetNames.Unknown(
                seats is null ? "ball or pocket" : "pocket", request.Target, request.Place, [.. balls.Select(ball => ball.FullName)],
                [.. balls.Select(ball => ball.Name), .. passages.Select(passage => passage.FullName), .. passages.Select(passage => passage.Name)]));
            return null;
        }

        return names.Find("pocket", target, request.Place, PassagesOf) is { } pocket ? Insert(request, pocket, seats, dropped) : null;
    }

    /// <summary>The seats that a revision of any part gives a ball in that pocket; empty when none does.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="pocket">The pocket.</param>
    public static ImmutableArray<Seat> KnownSeats(Unit unit, PassageName pocket) => unit.Parts
        .SelectMany(part => part.Revisions).SelectMany(revision => revision.Balls)
        .FirstOrDefault(ball => ball.Pocket.Name == pocket)?.Seats ?? [];

    private static IEnumerable<(string Name, Passage Item)> PassagesOf(Revision revision) => revision.Passages.Select(passage => (passage.Name, passage));

    private InsertBall? Insert(ChangeRequest.Ball request, Named<Passage> pocket, string? seats, HashSet<string> dropped)
    {
        var name = new PassageName(pocket.Part, pocket.Name);
        var chosen = seats is null ? KnownSeats(assembly.Unit, name) : Seats(request, pocket, seats);
        if (chosen.IsDefault) return null;
        var openings = string.Join(", ", pocket.Item.Locations.Select(use => use.Location));
        if (chosen.IsEmpty)
        {
            faults.Add(ChangeRules.ImpossibleChange.At(
                request.Place, $"no revision has a ball in {name}, so its seats are not known",
                openings.Length == 0 ? "It opens on no joint." : $"Name one or two of its locations as {name}@{pocket.Item.Locations[0].Location}: {openings}."));
            return null;
        }

        foreach (var other in names.All(Of).Where(ball => ball.Item.Pocket.Name == name && !dropped.Contains(ball.FullName)))
        {
            if (seats is not null && !other.Item.Seats.Any(seat => chosen.Any(mine => SeatText.Of(mine).Equals(SeatText.Of(seat))))) continue;
            faults.Add(ChangeRules.ImpossibleChange.At(
                request.Place, $"{name} holds ball {other.FullName} already", $"For another size: --ball {other.FullName}=...; to take it out: --drop {other.FullName}.") with
            {
                Related = [new RelatedPlace(other.Item.Place, $"the ball")],
            });
            return null;
        }

        var taken = names.All(Of).Where(ball => ball.Part == pocket.Part).Select(ball => ball.Name).ToHashSet();
        var own = $"{pocket.Name}-ball";
        for (var i = 2; taken.Contains(own); i++) own = $"{pocket.Name}-ball-{i}";
        return new InsertBall(pocket.Part, new Ball(own, new PassageUse(name, pocket.Item.Place), chosen, request.Diameter, pocket.Item.Place));
    }

    /// <summary>The seats that are named; default with a finding when one is no location of the pocket.</summary>
    private ImmutableArray<Seat> Seats(ChangeRequest.Ball request, Named<Passage> pocket, string seats)
    {
        var ids = seats.Split('+', StringSplitOptions.TrimEntries);
        if (ids.Length > 2 || ids.Distinct().Count() < ids.Length)
        {
            faults.Add(ChangeRules.ImpossibleChange.At(request.Place, $"a ball has one seat or two, not '{seats}'", "Write for example body.either@11+12."));
            return default;
        }

        var known = pocket.Item.Locations;
        foreach (var id in ids)
        {
            var uses = known.Where(use => use.Location == id).ToList();
            if (uses.Count == 1) continue;
            faults.Add(uses.Count == 0
                ? TargetNames.Unknown($"location of {pocket.FullName}", id, request.Place, [.. known.Select(use => use.Location)], [])
                : ChangeRules.AmbiguousTarget.At(
                    request.Place, $"{pocket.FullName} opens at {id} on several joints: {string.Join(", ", uses.Select(use => use.Joint))}",
                    "Describe the ball in the circuit file instead."));
            return default;
        }

        return [.. ids.Select(id => known.First(use => use.Location == id)).Select(use => (Seat)new Seat.AtLocation(use.Joint, use.Location, use.Place))];
    }
}
