using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Checks that round holes of sheets keep to their own location, where the file says where locations lie.</summary>
internal static class HoleReach
{
    /// <summary>Reports holes that reach the middle of another location, or run into another hole of the same revision.</summary>
    public static void Run(ImmutableArray<Joint> joints, ImmutableArray<Part> parts, FindingList findings)
    {
        foreach (var joint in joints)
        {
            var spots = joint.Locations.Where(location => location is { X: not null, Y: not null }).DistinctBy(location => location.Id).ToDictionary(location => location.Id, StringComparer.Ordinal);
            if (spots.Count < 2) continue;
            var told = new HashSet<Opening>(ReferenceEqualityComparer.Instance);
            foreach (var sheet in joint.Sheets)
            {
                foreach (var revision in parts.Where(part => part.Name == sheet.Name).SelectMany(part => part.Revisions)) Check(sheet.Name, revision, spots, told, findings);
            }
        }
    }

    private static void Check(string sheet, Revision revision, Dictionary<string, Location> spots, HashSet<Opening> told, FindingList findings)
    {
        // Of several holes at one location, which overlap there, the widest reaches furthest.
        var holes = revision.Openings.Where(opening => opening.Shape is Shape.Hole && opening.At.Length == 1)
            .GroupBy(opening => opening.At[0].Name, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.MaxBy(RadiusOf)!, StringComparer.Ordinal);
        foreach (var (at, opening) in holes)
        {
            if (!spots.TryGetValue(at, out var here)) continue;
            var radius = RadiusOf(opening);
            var reached = spots.Values.Where(there => there.Id != at)
                .Select(there => (There: there, Other: holes.GetValueOrDefault(there.Id), Away: double.Hypot(here.X!.Value - there.X!.Value, here.Y!.Value - there.Y!.Value)))
                .Where(next => next.Away < radius + (next.Other is null ? 0 : RadiusOf(next.Other)) && (next.Other is null || !told.Contains(next.Other)))
                .OrderBy(next => next.Away).Take(1);
            foreach (var (there, other, away) in reached)
            {
                if (!told.Add(opening)) continue;
                var runs = other is null ? Phrase.Of($"reaches location {there.Id}, which is {new Length(away)} away") : Phrase.Of($"runs into the hole of {new Length(2 * RadiusOf(other))} at {there.Id}, which is {new Length(away)} away");
                findings.Add(PartRules.HoleReachesNext.At(
                    opening.Place, $"opening {sheet}@{at}: a hole of {new Length(2 * radius)} {runs}", "Check the size and the coordinates, or write one slot that spans both.") with
                {
                    Related = [new(there.Place, $"location {there.Id}")],
                });
            }
        }
    }

    private static double RadiusOf(Opening opening) => ((Shape.Hole)opening.Shape).Diameter.Millimetres / 2;
}
