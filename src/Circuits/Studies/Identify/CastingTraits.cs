using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>What can be found out about a casting's cavities: where it is open, and what a wall parts or a track joins.</summary>
internal sealed class CastingTraits
{
    private const int Solid = -1;

    private readonly Part part;
    private readonly PartSpots spots;

    /// <summary>Per revision, which passage a location opens into.</summary>
    private readonly Dictionary<Spot, int>[] passageAt;

    public CastingTraits(Part part, PartSpots spots)
    {
        this.part = part;
        this.spots = spots;
        passageAt = [.. part.Revisions.Select(PassagesOf)];
    }

    /// <summary>Whether any revision of the part opens on a joint.</summary>
    public bool Any => passageAt.Any(map => map.Count > 0);

    public void Derive(TraitTable table)
    {
        foreach (var spot in spots.All)
        {
            for (var i = 0; i < passageAt.Length; i++)
            {
                if (At(i, spot) != Solid) table.Yes(Open(spot), i);
            }
        }

        // Locations that every revision has in one passage, or has solid alike, are one piece: a wall parts pieces.
        var pieces = spots.All
            .GroupBy(spot => string.Join(' ', Enumerable.Range(0, passageAt.Length).Select(i => At(i, spot))))
            .Select(piece => piece.ToImmutableArray()).ToList();
        for (var i = 0; i < pieces.Count; i++)
        {
            for (var j = i + 1; j < pieces.Count; j++) DeriveBetween(pieces[i], pieces[j], table);
        }
    }

    /// <summary>The casting is open at a location.</summary>
    public Trait Open(Spot spot) => new(part.Name, OpenKey(spot), $"passage at {spots.Label(spot)}", Means.Look) { Detail = PassageNames(spot) };

    /// <summary>A wall between two locations that are both open.</summary>
    public Trait Rib(Spot a, Spot b) => Between(TraitKind.Rib, a, b, "rib between {0} and {1}", TraitKind.Track);

    /// <summary>A cavity from one location to another.</summary>
    public Trait Track(Spot a, Spot b) => Between(TraitKind.Track, a, b, "track from {0} to {1}", TraitKind.Rib);

    /// <summary>Whether each revision is open at a location.</summary>
    public TraitRow OpenRow(Spot spot) => RowOf(Open(spot), i => At(i, spot) != Solid);

    /// <summary>Whether each revision has a wall between two locations.</summary>
    public TraitRow RibRow(Spot a, Spot b) => RowOf(Rib(a, b), i => BothOpen(i, a, b) && At(i, a) != At(i, b));

    /// <summary>Whether each revision joins two locations.</summary>
    public TraitRow TrackRow(Spot a, Spot b) => RowOf(Track(a, b), i => BothOpen(i, a, b) && At(i, a) == At(i, b));

    private void DeriveBetween(ImmutableArray<Spot> piece, ImmutableArray<Spot> other, TraitTable table)
    {
        var both = Enumerable.Range(0, passageAt.Length).Where(i => BothOpen(i, piece[0], other[0])).ToList();
        var joined = both.Where(i => At(i, piece[0]) == At(i, other[0])).ToList();
        if (joined.Count == 0 || joined.Count == both.Count) return;

        // The two that lie closest show the wall best; on one face if there are any, else the first named.
        var (a, b) = piece.SelectMany(_ => other, (one, two) => (one, two))
            .OrderBy(pair => pair.one.Joint == pair.two.Joint ? 0 : 1)
            .ThenBy(pair => spots.Distance(pair.one, pair.two)).First();
        // What the first of the revisions lacks is what a later one got: a rib, or a track.
        var got = joined.Contains(both[0]) ? RibRow(a, b) : TrackRow(a, b);
        for (var i = 0; i < got.Answers.Length; i++)
        {
            if (got.Answers[i] == Answer.Yes) table.Yes(got.Trait, i);
        }
    }

    private Trait Between(TraitKind kind, Spot a, Spot b, string phrase, TraitKind opposite)
    {
        if (spots.All.IndexOf(b) < spots.All.IndexOf(a)) (a, b) = (b, a);
        var words = string.Format(CultureInfo.InvariantCulture, phrase, spots.Label(a), spots.Label(b));
        return new Trait(part.Name, Key(kind, a, b), words, a.Joint == b.Joint ? Means.Look : Means.Wire)
        {
            Implied = [OpenKey(a), OpenKey(b)],
            Excluded = [Key(opposite, a, b)],
        };
    }

    private TraitRow RowOf(Trait trait, Func<int, bool> has) =>
        new(trait, [.. Enumerable.Range(0, passageAt.Length).Select(i => has(i) ? Answer.Yes : Answer.No)], IsListed: false);

    private bool BothOpen(int revision, Spot a, Spot b) => At(revision, a) != Solid && At(revision, b) != Solid;

    private int At(int revision, Spot spot) => passageAt[revision].GetValueOrDefault(spot, Solid);

    private static Dictionary<Spot, int> PassagesOf(Revision revision)
    {
        var map = new Dictionary<Spot, int>();
        for (var i = 0; i < revision.Passages.Length; i++)
        {
            foreach (var use in revision.Passages[i].Locations) map.TryAdd(new Spot(use.Joint, use.Location), i);
        }

        return map;
    }

    private string? PassageNames(Spot spot)
    {
        var names = part.Revisions.Zip(passageAt)
            .Where(pair => pair.Second.ContainsKey(spot))
            .Select(pair => pair.First.Passages[pair.Second[spot]].Name).Distinct().ToList();
        return names.Count == 0 ? null : string.Join(", ", names);
    }

    private static TraitKey OpenKey(Spot spot) => new(TraitKind.Passage, $"{spot.Joint}\n{spot.Id}", false);

    private static TraitKey Key(TraitKind kind, Spot a, Spot b)
    {
        var (one, two) = ($"{a.Joint}\n{a.Id}", $"{b.Joint}\n{b.Id}");
        return new TraitKey(kind, string.CompareOrdinal(one, two) < 0 ? $"{one}\n{two}" : $"{two}\n{one}", false);
    }
}
