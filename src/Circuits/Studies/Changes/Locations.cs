using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>A location of a sheet.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="Joint">The joint that it lies in.</param>
/// <param name="Id">The location's number.</param>
internal sealed record SheetLocation(Part Sheet, Revision Revision, Joint Joint, string Id)
{
    public string Element => $"{Sheet.Name}@{Id}";

    /// <summary>The openings there.</summary>
    public ImmutableArray<Opening> Openings => [.. Revision.Openings.Where(opening => opening.At.Any(at => at.Name == Id))];

    /// <summary>Whether it is the open window of a gasket.</summary>
    public bool IsWindow => Revision.OpenElsewhere && Openings.IsEmpty && Revision.OpenExcept.All(except => except.Name != Id);
}

/// <summary>Looks up locations: <c>plate@21</c>, <c>front:21</c>, <c>21</c>; and openings by their names, <c>plate@6-7</c>.</summary>
/// <param name="assembly">The assembly.</param>
internal sealed class Locations(Assembly assembly)
{
    /// <summary>The location, and the one opening that the name means when it names one; null with a finding when it is none or several.</summary>
    /// <param name="name">The name.</param>
    /// <param name="place">Where it is named.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public (SheetLocation At, Opening? Only)? Find(string name, Place place, List<Finding> faults)
    {
        var split = name.IndexOf('@', StringComparison.Ordinal);
        var colon = name.IndexOf(':', StringComparison.Ordinal);
        return split >= 0 ? InPart(name[..split], name[(split + 1)..], place, faults)
            : colon >= 0 ? InJoint(name[..colon], name[(colon + 1)..], place, faults)
            : Anywhere(name, place, faults);
    }

    /// <summary>Every location of every sheet of the assembly.</summary>
    public IEnumerable<SheetLocation> All() => assembly.Unit.Joints.SelectMany(joint => joint.Sheets.SelectMany(sheet => In(joint, sheet.Name)));

    private IEnumerable<SheetLocation> In(Joint joint, string sheet)
    {
        var part = assembly.Unit.FindPart(sheet)!;
        var revision = assembly.Revisions[assembly.Unit.Parts.IndexOf(part)];
        return IdsOf(joint).Select(id => new SheetLocation(part, revision, joint, id));
    }

    /// <summary>Every location of a joint: those that the file lists, those that a casting uses, and those where a sheet is open.</summary>
    private IEnumerable<string> IdsOf(Joint joint)
    {
        var castings = new[] { joint.Upper.Name, joint.Lower.Name }.SelectMany(name => assembly.Unit.FindPart(name)!.Revisions);
        var sheets = joint.Sheets.SelectMany(sheet => assembly.Unit.FindPart(sheet.Name)!.Revisions);
        return joint.Locations.Select(location => location.Id)
            .Concat(castings.SelectMany(revision => revision.Passages).SelectMany(passage => passage.Locations)
                .Where(use => use.Joint == joint.Name).Select(use => use.Location))
            .Concat(sheets.SelectMany(revision => revision.Openings).SelectMany(opening => opening.At).Select(at => at.Name))
            .Distinct();
    }

    private (SheetLocation, Opening?)? InPart(string part, string id, Place place, List<Finding> faults)
    {
        var sheets = assembly.Unit.Joints.SelectMany(joint => joint.Sheets).Select(sheet => sheet.Name).ToImmutableArray();
        if (!sheets.Contains(part))
        {
            faults.Add(assembly.Unit.FindPart(part) is null
                ? TargetNames.Unknown("sheet", part, place, sheets, [])
                : ChangeRules.UnknownTarget.At(place, $"{part} is no sheet, so it has no openings", Known("Sheets", sheets)));
            return null;
        }

        var here = assembly.Unit.Joints.Where(joint => joint.Sheets.Any(sheet => sheet.Name == part)).SelectMany(joint => In(joint, part)).ToList();
        if (here.Find(location => location.Id == id) is { } found) return (found, null);

        // A slot's name in reports lists its locations.
        if (here.SelectMany(location => location.Openings.Select(opening => (At: location, Only: opening)))
            .Where(pair => string.Join('-', pair.Only.At.Select(at => at.Name)) == id).Take(1).ToList() is [var slot])
        {
            return (slot.At, slot.Only);
        }

        faults.Add(TargetNames.Unknown($"location of {part}", id, place, [.. here.Select(location => location.Id)], []));
        return null;
    }

    private (SheetLocation, Opening?)? InJoint(string name, string id, Place place, List<Finding> faults)
    {
        if (assembly.Unit.Joints.FirstOrDefault(joint => joint.Name == name) is not { } joint)
        {
            faults.Add(TargetNames.Unknown("joint", name, place, [.. assembly.Unit.Joints.Select(each => each.Name)], []));
            return null;
        }

        if (!joint.Sheets.IsEmpty) return Among([joint], id, $"location of {name}", place, faults);
        faults.Add(ChangeRules.UnknownTarget.At(place, $"joint {name} has no sheet between its castings, so it has no openings"));
        return null;
    }

    private (SheetLocation, Opening?)? Anywhere(string id, Place place, List<Finding> faults) =>
        Among(assembly.Unit.Joints, id, "location", place, faults);

    /// <summary>A gasket is meant only where there is no other sheet; to change it, it must be named.</summary>
    private (SheetLocation, Opening?)? Among(ImmutableArray<Joint> joints, string id, string what, Place place, List<Finding> faults)
    {
        var candidates = new List<SheetLocation>();
        foreach (var joint in joints)
        {
            var here = joint.Sheets.SelectMany(sheet => In(joint, sheet.Name)).Where(location => location.Id == id).ToList();
            var plates = here.Where(location => !location.Revision.OpenElsewhere).ToList();
            candidates.AddRange(plates.Count > 0 ? plates : here);
        }

        if (candidates is [var only]) return (only, null);
        if (candidates.Count == 0)
        {
            var known = joints.SelectMany(joint => joint.Sheets.SelectMany(sheet => In(joint, sheet.Name))).Select(location => location.Id).Distinct();
            faults.Add(TargetNames.Unknown(what, id, place, [.. known], []));
            return null;
        }

        faults.Add(ChangeRules.AmbiguousTarget.At(
            place, $"several sheets have a location {id}", $"Name one: {string.Join(", ", candidates.Select(location => location.Element))}."));
        return null;
    }

    private static string Known(string what, ImmutableArray<string> names) => names.IsEmpty ? "The unit has none." : $"{what}: {string.Join(", ", names)}.";
}
