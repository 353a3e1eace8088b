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
        var sheetsDone = new HashSet<string>(StringComparer.Ordinal);
        var castingUses = CastingUses(parts);
        foreach (var joint in joints)
        {
            var castings = castingUses[joint.Name];
            var listed = joint.Locations.IsEmpty ? null : SetOf(joint.Locations.Select(location => location.Id).ToList());
            var used = Unread(joint, names) ? null : SetOf([.. castings.Select(use => use.Id)]);
            foreach (var use in (List<Use>)[.. castings, .. SheetUses(joint, parts, sheetsDone)])
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

    private static HashSet<string> SetOf(List<string> locations)
    {
        var set = new HashSet<string>(locations.Count, StringComparer.Ordinal);
        foreach (var location in locations) set.Add(location);
        return set;
    }

    /// <summary>Where castings open on each joint.</summary>
    private static Groups<Use> CastingUses(ImmutableArray<Part> parts)
    {
        var uses = new Groups<Use>();
        foreach (var part in parts)
        {
            foreach (var passage in part.Revisions.SelectMany(revision => revision.Passages))
            {
                foreach (var use in passage.Locations) uses.Add(use.Joint, new Use(part.Name, passage, use.Location, use.Place));
            }
        }

        return uses;
    }

    private static List<Use> SheetUses(Joint joint, ImmutableArray<Part> parts, HashSet<string> done)
    {
        var uses = new List<Use>();
        foreach (var sheet in joint.Sheets)
        {
            // One that lies in two joints is reported as such.
            if (!done.Add(sheet.Name) || parts.FirstOrDefault(part => part.Name == sheet.Name) is not { } part) continue;
            foreach (var revision in part.Revisions)
            {
                foreach (var opening in revision.Openings)
                {
                    foreach (var at in opening.At) uses.Add(new Use(sheet.Name, opening, at.Name, at.Place));
                }

                foreach (var at in revision.OpenExcept) uses.Add(new Use(sheet.Name, null, at.Name, at.Place));
            }
        }

        return uses;
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
