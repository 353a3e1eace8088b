using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>A location on a joint.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Id">The location's number.</param>
internal readonly record struct Spot(string Joint, string Id);

/// <summary>The locations at which a part can have something.</summary>
internal sealed class PartSpots
{
    private readonly Dictionary<Spot, (double X, double Y)> coordinates = [];
    private readonly HashSet<string> ambiguous;

    public PartSpots(Unit unit, Part part)
    {
        var all = new List<Spot>();
        foreach (var joint in unit.Joints)
        {
            if (part.Kind == PartKind.Sheet ? joint.Sheets.All(sheet => sheet.Name != part.Name) : joint.Upper.Name != part.Name && joint.Lower.Name != part.Name)
                continue;
            all.AddRange(joint.Locations.Select(location => new Spot(joint.Name, location.Id)));
            var used =
                from casting in unit.Parts
                from revision in casting.Revisions
                from passage in revision.Passages
                from use in passage.Locations
                where use.Joint == joint.Name
                select new Spot(joint.Name, use.Location);
            // Without a list of locations their numbers give the order, and words come after numbers.
            all.AddRange(used.OrderBy(spot => int.TryParse(spot.Id, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : int.MaxValue));
            foreach (var location in joint.Locations)
            {
                if (location is { X: { } x, Y: { } y }) coordinates[new Spot(joint.Name, location.Id)] = (x, y);
            }
        }

        All = [.. all.Distinct()];
        ambiguous = [.. All.GroupBy(spot => spot.Id).Where(same => same.Count() > 1).Select(same => same.Key)];
    }

    /// <summary>Every location, joint by joint, in the order of the joint's list, else by number.</summary>
    public ImmutableArray<Spot> All { get; }

    /// <summary>The location as phrases name it; the joint is named only where the number alone would not do.</summary>
    public string Label(Spot spot) => ambiguous.Contains(spot.Id) ? $"{spot.Id} on {spot.Joint}" : spot.Id;

    /// <summary>The distance between two locations of one joint; infinite when it is not known.</summary>
    public double Distance(Spot a, Spot b) =>
        a.Joint == b.Joint && coordinates.TryGetValue(a, out var at) && coordinates.TryGetValue(b, out var other)
            ? Math.Sqrt(((at.X - other.X) * (at.X - other.X)) + ((at.Y - other.Y) * (at.Y - other.Y)))
            : double.PositiveInfinity;
}
