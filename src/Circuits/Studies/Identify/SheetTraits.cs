using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>What can be found out about a sheet: its openings, their shapes and sizes, its cups, a gasket's windows.</summary>
internal static class SheetTraits
{
    public static void Derive(Part part, PartSpots spots, TraitTable table)
    {
        for (var i = 0; i < part.Revisions.Length; i++)
        {
            var revision = part.Revisions[i];
            foreach (var same in revision.Openings.GroupBy(opening => Subject(opening.At.Select(at => at.Name))))
                DeriveOpenings(part.Name, [.. same], i, table);
            if (revision.OpenElsewhere) DeriveWindows(part.Name, revision, i, spots, table);
        }
    }

    /// <summary>A hole or slot over those locations, or an opening of any shape.</summary>
    public static Trait Opening(string part, TraitKind kind, IReadOnlyList<string> at, bool sized = false)
    {
        var word = kind switch { TraitKind.Hole => "hole", TraitKind.Slot => "slot", TraitKind.Cup => "cup", TraitKind.Window => "window", _ => "opening" };
        var single = at.Select(id => new TraitKey(TraitKind.Opening, Subject([id]), false));
        return new Trait(part, new TraitKey(kind, Subject(at), sized), $"{word} at {string.Join('-', at)}", sized ? Means.PinGauge : Means.Look)
        {
            Implied = kind is TraitKind.Hole or TraitKind.Slot
                ? [.. single, new TraitKey(kind, Subject(at), false), new TraitKey(TraitKind.Opening, Subject(at), false)]
                : [.. single],
        };
    }

    /// <summary>How many holes lie at one location, or over the same locations.</summary>
    public static Trait HoleCount(string part, IReadOnlyList<string> at) =>
        new(part, new TraitKey(TraitKind.HoleCount, Subject(at), false), $"holes at {string.Join('-', at)}", Means.Count) { One = $"hole at {string.Join('-', at)}" };

    private static void DeriveOpenings(string part, ImmutableArray<Opening> openings, int revision, TraitTable table)
    {
        ImmutableArray<string> at = [.. openings[0].At.Select(location => location.Name)];
        foreach (var opening in openings)
        {
            switch (opening.Shape)
            {
                case Shape.Hole hole:
                    table.Yes(Opening(part, TraitKind.Hole, at), revision);
                    table.Size(Opening(part, TraitKind.Hole, at, sized: true), revision, new BenchSize(hole.Diameter.Millimetres, null));
                    break;
                case Shape.Slot slot:
                    table.Yes(Opening(part, TraitKind.Slot, at), revision);
                    table.Size(Opening(part, TraitKind.Slot, at, sized: true), revision, new BenchSize(slot.Width.Millimetres, slot.Length.Millimetres));
                    break;
                default:
                    // Only its area is known, or nothing: it may be a hole or a slot.
                    table.Maybe(Opening(part, TraitKind.Hole, at), revision);
                    table.Maybe(Opening(part, TraitKind.Slot, at), revision);
                    table.Maybe(Opening(part, TraitKind.Hole, at, sized: true), revision);
                    table.Maybe(Opening(part, TraitKind.Slot, at, sized: true), revision);
                    break;
            }

            var shaped = opening.Shape is Shape.Hole or Shape.Slot;
            table.Yes(Opening(part, TraitKind.Opening, at), revision, listed: !shaped);
            foreach (var id in at) table.Yes(Opening(part, TraitKind.Opening, [id]), revision, listed: !shaped);
            if (opening.Cup) table.Yes(Opening(part, TraitKind.Cup, at), revision);
        }

        var holes = openings.Count(opening => opening.Shape is Shape.Hole);
        if (openings.All(opening => opening.Shape is Shape.Hole or Shape.Slot)) table.Count(HoleCount(part, at), revision, holes, listed: holes > 1);
        else table.Maybe(HoleCount(part, at), revision, listed: false);
    }

    private static void DeriveWindows(string part, Revision revision, int index, PartSpots spots, TraitTable table)
    {
        foreach (var spot in spots.All)
        {
            if (revision.OpenExcept.Any(except => except.Name == spot.Id)) continue;
            if (revision.Openings.Any(opening => opening.At.Any(at => at.Name == spot.Id))) continue;
            table.Yes(Opening(part, TraitKind.Window, [spot.Id]), index);
            table.Yes(Opening(part, TraitKind.Opening, [spot.Id]), index, listed: false);
        }
    }

    private static string Subject(IEnumerable<string> at) => string.Join('\n', at.Order(StringComparer.Ordinal));
}
