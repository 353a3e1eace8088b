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
        var sheetsDone = new HashSet<string>(StringComparer.Ordinal);
        foreach (var joint in joints)
        {
            var listed = joint.Locations.IsEmpty ? null : joint.Locations.Select(location => location.Id).ToHashSet(StringComparer.Ordinal);
            var castings = CastingUses(joint, byName).ToList();
            var used = Unread(joint, names) ? null : castings.Select(use => use.Id).ToHashSet(StringComparer.Ordinal);
            var sheets = SheetUses(joint, byName, sheetsDone).ToList();
            foreach (var use in castings.Concat(sheets))
            {
                if (listed is not null && !listed.Contains(use.Id))
                    ReportUnlisted(joint, use, findings);
                else if (use.MustMeet && used is not null && !used.Contains(use.Id))
                    ReportUnused(joint, use, findings);
            }
        }
    }

    private static bool Unread(Joint joint, NameIndex names) =>
        names.FindPart(joint.Upper.Name) is not { Broken: false } || names.FindPart(joint.Lower.Name) is not { Broken: false };

    private static IEnumerable<Use> CastingUses(Joint joint, Dictionary<string, Part> parts)
    {
        foreach (var name in new[] { joint.Upper.Name, joint.Lower.Name })
        {
            if (!parts.TryGetValue(name, out var part)) continue;
            foreach (var passage in part.Revisions.SelectMany(revision => revision.Passages))
            {
                foreach (var use in passage.Locations)
                {
                    if (use.Joint == joint.Name) yield return new($"passage {name}.{passage.Name}", use.Location, use.Place, false);
                }
            }
        }
    }

    private static IEnumerable<Use> SheetUses(Joint joint, Dictionary<string, Part> parts, HashSet<string> done)
    {
        foreach (var sheet in joint.Sheets)
        {
            // One that lies in two joints is reported as such.
            if (!done.Add(sheet.Name) || !parts.TryGetValue(sheet.Name, out var part)) continue;
            foreach (var revision in part.Revisions)
            {
                foreach (var opening in revision.Openings)
                {
                    var label = $"opening {sheet.Name}@{string.Join('-', opening.At.Select(at => at.Name))}";
                    foreach (var at in opening.At) yield return new(label, at.Name, at.Place, true);
                }

                foreach (var at in revision.OpenExcept) yield return new($"part {sheet.Name}: open-except", at.Name, at.Place, false);
            }
        }
    }

    private static void ReportUnlisted(Joint joint, Use use, FindingList findings)
    {
        findings.Add(PartRules.UnknownLocation.At(
            use.Place, $"{use.Element}: joint {joint.Name} lists no location {use.Id}", "Correct the number, or add it to the joint's locations.")
            with
        { Related = [new(joint.Place, $"joint {joint.Name}")] });
    }

    private static void ReportUnused(Joint joint, Use use, FindingList findings)
    {
        findings.Add(PartRules.UnusedLocation.At(
            use.Place, $"{use.Element}: no revision of {joint.Upper.Name} or {joint.Lower.Name} has a passage at {use.Id}", "Correct the number, or add it to a passage."));
    }

    private sealed record Use(string Element, string Id, Place Place, bool MustMeet);
}
