using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Openings(Assembly assembly)
    {
        foreach (var (_, part, revision) in Fitted(assembly).Where(fitted => fitted.Part.Kind == PartKind.Sheet))
        {
            foreach (var opening in revision.Openings)
            {
                var plug = new PlugOpening(part.Name, [.. opening.At.Select(at => at.Name)], true, opening.Place);
                Add(new Fault(FaultKind.HolePlugged, plug.Element, Phrase.Of($"{plug.Element} plugged"), opening.Place, 0, [plug]));
                if (opening is not { At: [var at], Shape: Shape.Hole hole } || revision.Openings.Count(other => other.At.Any(its => its.Name == at.Name)) > 1) continue;
                var wear = new SetHole(part.Name, at.Name, Wider(assembly, hole), hole, opening.Place);
                Add(Worn(wear.Element, Phrase.Of($"{wear.Element}"), wear.Hole, wear));
            }
        }

        foreach (var location in LoneWindows(assembly))
        {
            var plug = new PlugOpening(location.Sheet.Name, [location.Id], true, location.Revision.Place);
            Add(new Fault(FaultKind.HolePlugged, plug.Element, Phrase.Of($"no window in {location.Sheet.Name} at {location.Id}"), location.Revision.Place, 0, [plug]));
        }
    }

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
}
