using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Reading;

/// <summary>Checks that castings, sheets and joints speak of the same locations.</summary>
internal static class LocationCheck
{
    /// <summary>Reports locations that a joint does not list, and openings that meet no passage in any assembly.</summary>
    public static void Run(ImmutableArray<Joint> joints, ImmutableArray<Part> parts, NameIndex names, FindingList findings)
    {
        var byName = parts.ToDictionary(part => part.Name, StringComparer.Ordinal);
        foreach (var joint in joints)
        {
            var listed = joint.Locations.IsEmpty ? null : joint.Locations.Select(location => location.Id).ToHashSet(StringComparer.Ordinal);
            var uses = CastingUses(joint, byName).ToList();
            if (listed is not null)
            {
                foreach (var use in uses.Where(use => !listed.Contains(use.Location))) ReportUnlisted(joint, use.Location, use.Place, findings);
            }

            var used = Unread(joint, names) ? null : uses.Select(use => use.Location).ToHashSet(StringComparer.Ordinal);
            foreach (var (sheet, location, isOpening) in SheetUses(joint, byName))
            {
                if (listed is not null && !listed.Contains(location.Name)) ReportUnlisted(joint, location.Name, location.Place, findings);
                else if (isOpening && used is not null && !used.Contains(location.Name)) ReportUnused(joint, sheet, location, findings);
            }
        }
    }

    private static bool Unread(Joint joint, NameIndex names) =>
        names.FindPart(joint.Upper.Name) is not { Broken: false } || names.FindPart(joint.Lower.Name) is not { Broken: false };

    private static IEnumerable<LocationUse> CastingUses(Joint joint, Dictionary<string, Part> parts) =>
        new[] { joint.Upper.Name, joint.Lower.Name }
            .Where(parts.ContainsKey)
            .SelectMany(name => parts[name].Revisions)
            .SelectMany(revision => revision.Passages)
            .SelectMany(passage => passage.Locations)
            .Where(use => use.Joint == joint.Name);

    private static IEnumerable<(string Sheet, NameUse Location, bool IsOpening)> SheetUses(Joint joint, Dictionary<string, Part> parts) =>
        joint.Sheets
            .Where(sheet => parts.ContainsKey(sheet.Name))
            .SelectMany(sheet => parts[sheet.Name].Revisions.SelectMany(revision =>
                revision.Openings.SelectMany(opening => opening.At).Select(at => (sheet.Name, at, true))
                    .Concat(revision.OpenExcept.Select(at => (sheet.Name, at, false)))));

    private static void ReportUnlisted(Joint joint, string location, Place place, FindingList findings)
    {
        findings.Add(PartRules.UnknownLocation.At(
            place, $"Joint {joint.Name} lists no location {location}", "Correct the number, or add it to the joint's locations.")
            with
        { Related = [new(joint.Place, $"joint {joint.Name}")] });
    }

    private static void ReportUnused(Joint joint, string sheet, NameUse location, FindingList findings)
    {
        findings.Add(PartRules.UnusedLocation.At(
            location.Place, $"opening {sheet}@{location.Name}: no revision of {joint.Upper.Name} or {joint.Lower.Name} has a passage there", "Correct the number, or add it to a passage."));
    }
}
