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
        var castingUses = parts.SelectMany(CastingUses).ToLookup(use => use.Joint, use => use.Use, StringComparer.Ordinal);
        foreach (var joint in joints)
        {
            var listed = joint.Locations.IsEmpty ? null : joint.Locations.Select(location => location.Id).ToHashSet(StringComparer.Ordinal);
            var castings = castingUses[joint.Name].ToList();
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

    private static IEnumerable<(string Joint, Use Use)> CastingUses(Part part) =>
        from revision in part.Revisions
        from passage in revision.Passages
        from use in passage.Locations
        select (use.Joint, new Use(part.Name, passage, use.Location, use.Place));

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
                    foreach (var at in opening.At) yield return new(sheet.Name, opening, at.Name, at.Place);
                }

                foreach (var at in revision.OpenExcept) yield return new(sheet.Name, null, at.Name, at.Place);
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

    /// <summary>A location that an element names.</summary>
    /// <param name="Part">The element's part.</param>
    /// <param name="Source">The passage or opening, or null for <c>open-except</c>.</param>
    /// <param name="Id">The location.</param>
    /// <param name="Place">Where it is named.</param>
    private readonly record struct Use(string Part, object? Source, string Id, Place Place)
    {
        /// <summary>Whether the castings must have a passage there.</summary>
        public bool MustMeet => Source is Opening;

        /// <summary>What messages call the element.</summary>
        public string Element => Source switch
        {
            Passage passage => $"passage {Part}.{passage.Name}",
            Opening opening => $"opening {Part}@{string.Join('-', opening.At.Select(at => at.Name))}",
            _ => $"part {Part}: open-except",
        };
    }
}
