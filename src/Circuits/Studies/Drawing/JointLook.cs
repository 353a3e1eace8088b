using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Studies.Drawing;

/// <summary>Whether something is in both of two assemblies that are laid over one another, or in one.</summary>
public enum LookChange
{
    /// <summary>In both, or there is only one.</summary>
    Kept,

    /// <summary>In the first alone.</summary>
    Removed,

    /// <summary>In the second alone.</summary>
    Added,
}

/// <summary>A location of a joint, and where it is drawn.</summary>
/// <param name="Id">Its number, as the file writes it.</param>
/// <param name="X">Millimetres to the right.</param>
/// <param name="Y">Millimetres up.</param>
/// <param name="IsMeasured">Whether the file gives these coordinates; else they are a place in a grid.</param>
public sealed record LookLocation(string Id, double X, double Y, bool IsMeasured);

/// <summary>A passage where it opens on a joint.</summary>
/// <param name="Name">The passage.</param>
/// <param name="IsUpper">Whether it belongs to the joint's first casting.</param>
/// <param name="Locations">Where it opens.</param>
/// <param name="Change">In which of two assemblies.</param>
public sealed record LookTrack(PassageName Name, bool IsUpper, ImmutableArray<string> Locations, LookChange Change);

/// <summary>An opening of a sheet.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Locations">The locations that it spans.</param>
/// <param name="Shape">Its shape.</param>
/// <param name="Change">In which of two assemblies.</param>
public sealed record LookOpening(string Sheet, ImmutableArray<string> Locations, Shape Shape, LookChange Change);

/// <summary>A ball over its seat.</summary>
/// <param name="Name">The ball.</param>
/// <param name="Location">Its seat.</param>
/// <param name="Millimetres">Its diameter; null where the file gives none.</param>
/// <param name="Change">In which of two assemblies.</param>
public sealed record LookBall(string Name, string Location, double? Millimetres, LookChange Change);

/// <summary>A location at which a casting has a passage and a sheet has metal or paper.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Location">The location.</param>
/// <param name="Change">In which of two assemblies it is closed.</param>
public sealed record LookBlank(string Sheet, string Location, LookChange Change);

/// <summary>A joint of an assembly, or of two laid over one another, ready to be drawn. Immutable.</summary>
public sealed record JointLook
{
    private const double GridPitch = 18;
    private const int GridColumns = 10;

    private JointLook(Joint joint, Assembly assembly, Assembly? over)
    {
        Joint = joint;
        Assembly = assembly;
        Over = over;
    }

    /// <summary>The joint.</summary>
    public Joint Joint { get; }

    /// <summary>The assembly.</summary>
    public Assembly Assembly { get; }

    /// <summary>The assembly that is laid over it, or null.</summary>
    public Assembly? Over { get; }

    /// <summary>Every location that anything names, in the order of their numbers.</summary>
    public required ImmutableArray<LookLocation> Locations { get; init; }

    /// <summary>Passages of both castings.</summary>
    public required ImmutableArray<LookTrack> Tracks { get; init; }

    /// <summary>Openings of the sheets that have a shape; where a gasket is open, nothing is drawn.</summary>
    public required ImmutableArray<LookOpening> Openings { get; init; }

    /// <summary>Balls over seats of this joint.</summary>
    public required ImmutableArray<LookBall> Balls { get; init; }

    /// <summary>Where a sheet closes a passage.</summary>
    public required ImmutableArray<LookBlank> Blanks { get; init; }

    /// <summary>Looks at a joint.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="joint">One of its unit's joints.</param>
    /// <param name="over">Another assembly of the same unit, laid over it; or null.</param>
    public static JointLook Of(Assembly assembly, Joint joint, Assembly? over)
    {
        var tracks = Merge(TracksOf(assembly, joint), over is null ? null : TracksOf(over, joint), (track, change) => track with { Change = change }, track => $"{track.Name} {string.Join(' ', track.Locations)}");
        var openings = Merge(OpeningsOf(assembly, joint), over is null ? null : OpeningsOf(over, joint), (opening, change) => opening with { Change = change }, opening => $"{opening.Sheet} {string.Join(' ', opening.Locations)} {Size(opening.Shape)}");
        var balls = Merge(BallsOf(assembly, joint), over is null ? null : BallsOf(over, joint), (ball, change) => ball with { Change = change }, ball => FormattableString.Invariant($"{ball.Name} {ball.Location} {ball.Millimetres}"));
        var blanks = Merge(BlanksOf(assembly, joint), over is null ? null : BlanksOf(over, joint), (blank, change) => blank with { Change = change }, blank => $"{blank.Sheet} {blank.Location}");
        var named = tracks.SelectMany(track => track.Locations).Concat(openings.SelectMany(opening => opening.Locations)).Concat(balls.Select(ball => ball.Location))
            .Concat(blanks.Select(blank => blank.Location)).Concat(joint.Locations.Select(location => location.Id));
        return new JointLook(joint, assembly, over)
        {
            Locations = Place(joint, [.. named.Distinct()]),
            Tracks = tracks,
            Openings = openings,
            Balls = balls,
            Blanks = blanks,
        };
    }

    /// <summary>Those that the file gives no place go into a grid below the others, in the order of their numbers.</summary>
    private static ImmutableArray<LookLocation> Place(Joint joint, List<string> ids)
    {
        var known = joint.Locations.Where(location => location is { X: not null, Y: not null }).DistinctBy(location => location.Id).ToDictionary(location => location.Id);
        var lowest = known.Values.Select(location => location.Y!.Value).DefaultIfEmpty(0).Min();
        var left = known.Values.Select(location => location.X!.Value).DefaultIfEmpty(0).Min();
        ids.Sort((a, b) => a.Length != b.Length ? a.Length.CompareTo(b.Length) : string.CompareOrdinal(a, b));
        var unplaced = ids.Where(id => !known.ContainsKey(id)).ToList();
        return
        [
            .. ids.Where(known.ContainsKey).Select(id => new LookLocation(id, known[id].X!.Value, known[id].Y!.Value, true)),
            .. unplaced.Select((id, i) => new LookLocation(id, left + (i % GridColumns * GridPitch), lowest - (((i / GridColumns) + 1) * GridPitch), false)),
        ];
    }

    private static ImmutableArray<TItem> Merge<TItem>(List<TItem> first, List<TItem>? second, Func<TItem, LookChange, TItem> mark, Func<TItem, string> key)
    {
        if (second is null) return [.. first];
        var before = first.Select(key).ToHashSet();
        var after = second.Select(key).ToHashSet();
        return
        [
            .. first.Select(item => mark(item, after.Contains(key(item)) ? LookChange.Kept : LookChange.Removed)),
            .. second.Where(item => !before.Contains(key(item))).Select(item => mark(item, LookChange.Added)),
        ];
    }

    private static string Size(Shape shape) => shape switch
    {
        Shape.Hole hole => FormattableString.Invariant($"hole {hole.Diameter.Millimetres:0.###}"),
        Shape.Slot slot => FormattableString.Invariant($"slot {slot.Width.Millimetres:0.###} {slot.Length.Millimetres:0.###}"),
        _ => FormattableString.Invariant($"{shape.Area?.SquareMillimetres:0.###}"),
    };

    private static Revision RevisionOf(Assembly assembly, string part) => assembly.Revisions[assembly.Unit.Parts.IndexOf(assembly.Unit.FindPart(part)!)];

    private static List<LookTrack> TracksOf(Assembly assembly, Joint joint) =>
    [
        .. new[] { (joint.Upper.Name, true), (joint.Lower.Name, false) }.SelectMany(side => RevisionOf(assembly, side.Name).Passages
            .Select(passage => new LookTrack(
                new PassageName(side.Name, passage.Name), side.Item2, [.. passage.Locations.Where(use => use.Joint == joint.Name).Select(use => use.Location)], LookChange.Kept))
            .Where(track => track.Locations.Length > 0)),
    ];

    private static List<LookOpening> OpeningsOf(Assembly assembly, Joint joint) =>
    [
        .. JointStacker.Stack(assembly, joint, (_, _) => { }).Openings.Where(opening => opening.Shape is not null)
            .Select(opening => new LookOpening(opening.Part, opening.Locations, opening.Shape!, LookChange.Kept)),
    ];

    private static List<LookBlank> BlanksOf(Assembly assembly, Joint joint)
    {
        var stack = JointStacker.Stack(assembly, joint, (_, _) => { });
        var used = TracksOf(assembly, joint).SelectMany(track => track.Locations).Distinct().ToList();
        return
        [
            .. joint.Sheets.SelectMany((sheet, i) => used.Where(location => !stack.Openings.Any(opening => opening.Sheet == i && opening.Locations.Contains(location)))
                .Select(location => new LookBlank(sheet.Name, location, LookChange.Kept))),
        ];
    }

    private static List<LookBall> BallsOf(Assembly assembly, Joint joint) =>
    [
        .. assembly.Unit.Parts.Zip(assembly.Revisions).SelectMany(pair => pair.Second.Balls.SelectMany(ball => ball.Seats.OfType<Seat.AtLocation>()
            .Where(seat => (seat.Joint ?? JointOf(assembly, ball.Pocket.Name, seat.Location)) == joint.Name)
            .Select(seat => new LookBall($"{pair.First.Name}.{ball.Name}", seat.Location, ball.Diameter?.Millimetres, LookChange.Kept)))),
    ];

    private static string? JointOf(Assembly assembly, PassageName pocket, string location)
    {
        if (assembly.Unit.FindPart(pocket.Part) is null) return null;
        var uses = RevisionOf(assembly, pocket.Part).Passages.FirstOrDefault(passage => passage.Name == pocket.Passage)?.Locations ?? [];
        return uses.FirstOrDefault(use => use.Location == location).Joint;
    }
}
