using System.Globalization;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Holes plugged, and holes worn larger: in sheets, and inside castings.</summary>
internal static class HoleFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly) => [.. Plugged(assembly), .. Worn(assembly)];

    private static IEnumerable<Fault> Plugged(Assembly assembly)
    {
        foreach (var (sheet, opening) in Openings(assembly))
        {
            var plug = new PlugOpening(sheet, [.. opening.At.Select(at => at.Name)], true, opening.Place);
            yield return new Fault(FaultKind.HolePlugged, plug.Element, $"{plug.Element} plugged", opening.Place, 0, [plug]);
        }

        foreach (var location in LoneWindows(assembly))
        {
            var plug = new PlugOpening(location.Sheet.Name, [location.Id], true, location.Revision.Place);
            yield return new Fault(FaultKind.HolePlugged, plug.Element, $"no window in {location.Sheet.Name} at {location.Id}", location.Revision.Place, 0, [plug]);
        }

        foreach (var (part, hole) in Restrictions(assembly))
        {
            var plug = new SetRestriction(part, hole, null);
            yield return new Fault(FaultKind.HolePlugged, plug.Element, $"the hole between {hole.A.Name} and {hole.B.Name} plugged", hole.Place, 0, [plug]);
        }

        foreach (var (part, ball, seat) in Seats(assembly))
        {
            var plug = new SetSeat(part, ball, seat, null);
            yield return new Fault(FaultKind.HolePlugged, plug.Element, $"the seat of ball {part}.{ball.Name} to {seat.To.Name} plugged", seat.Place, 0, [plug]);
        }
    }

    private static IEnumerable<Fault> Worn(Assembly assembly)
    {
        foreach (var (sheet, opening) in Openings(assembly))
        {
            if (opening is not { At: [var at], Shape: Shape.Hole hole } || Openings(assembly).Count(pair => pair.Sheet == sheet && pair.Opening.At.Any(other => other.Name == at.Name)) > 1) continue;
            var wear = new SetHole(sheet, at.Name, Wider(assembly, hole), hole, opening.Place);
            yield return Worn(wear.Element, wear.Element, wear.Hole, wear);
        }

        foreach (var (part, restriction) in Restrictions(assembly))
        {
            if (restriction.Shape is not Shape.Hole hole) continue;
            var wear = new SetRestriction(part, restriction, Wider(assembly, hole));
            yield return Worn(wear.Element, $"the hole between {restriction.A.Name} and {restriction.B.Name}", wear.Hole!, wear);
        }

        foreach (var (part, ball, seat) in Seats(assembly))
        {
            if (seat.Shape is not Shape.Hole hole) continue;
            var wear = new SetSeat(part, ball, seat, Wider(assembly, hole));
            yield return Worn(wear.Element, $"the seat of ball {part}.{ball.Name} to {seat.To.Name}", wear.Hole!, wear);
        }
    }

    private static Fault Worn(string element, string what, Shape.Hole hole, Change change) => new(
        FaultKind.HoleWorn, element, string.Create(CultureInfo.InvariantCulture, $"{what} worn to {hole.Diameter.Millimetres:0.##} mm"), change.Place, 0, [change]);

    private static Shape.Hole Wider(Assembly assembly, Shape.Hole hole)
    {
        var millimetres = hole.Diameter.Millimetres * assembly.Unit.Faults.Wear;
        return new Shape.Hole(new Length(millimetres), string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.##} mm"));
    }

    private static IEnumerable<(string Sheet, Opening Opening)> Openings(Assembly assembly) => FaultLibrary.Fitted(assembly)
        .Where(pair => pair.Part.Kind == PartKind.Sheet).SelectMany(pair => pair.Revision.Openings.Select(opening => (pair.Part.Name, opening)));

    /// <summary>Windows of a gasket where no plate lies beside it whose hole could be plugged instead, and both castings have a passage.</summary>
    private static IEnumerable<SheetLocation> LoneWindows(Assembly assembly)
    {
        foreach (var joint in assembly.Unit.Joints)
        {
            var sheets = joint.Sheets.Select(sheet => sheet.Name).ToHashSet();
            if (FaultLibrary.Fitted(assembly).Any(pair => sheets.Contains(pair.Part.Name) && !pair.Revision.OpenElsewhere)) continue;
            var used = new[] { joint.Upper.Name, joint.Lower.Name }.Select(name => LocationsOf(assembly, joint, name)).ToList();
            foreach (var location in new Locations(assembly).All())
            {
                if (location.Joint == joint && location.IsWindow && used.TrueForAll(ids => ids.Contains(location.Id))) yield return location;
            }
        }
    }

    private static HashSet<string> LocationsOf(Assembly assembly, Joint joint, string casting) =>
    [
        .. FaultLibrary.Fitted(assembly).Where(pair => pair.Part.Name == casting).SelectMany(pair => pair.Revision.Passages)
            .SelectMany(passage => passage.Locations).Where(use => use.Joint == joint.Name).Select(use => use.Location),
    ];

    private static IEnumerable<(string Part, Restriction Hole)> Restrictions(Assembly assembly) =>
        FaultLibrary.Fitted(assembly).SelectMany(pair => pair.Revision.Restrictions.Select(hole => (pair.Part.Name, hole)));

    private static IEnumerable<(string Part, Ball Ball, Seat.InCasting Seat)> Seats(Assembly assembly) =>
        from pair in FaultLibrary.Fitted(assembly)
        from ball in pair.Revision.Balls
        from seat in ball.Seats.OfType<Seat.InCasting>()
        select (pair.Part.Name, ball, seat);
}
