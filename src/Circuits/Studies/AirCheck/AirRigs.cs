using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Faults;

namespace Circuits.Studies.AirCheck;

/// <summary>Finds the ways in which a unit can lie on the bench, and where air can be let in.</summary>
internal static class AirRigs
{
    /// <summary>The whole unit first, then each open face with a clutch behind it, in the order of the file.</summary>
    /// <param name="assembly">The assembly.</param>
    public static ImmutableArray<AirRig> Of(Assembly assembly)
    {
        var chambers = assembly.Unit.Clutches.Select(clutch => clutch.In(assembly)).Where(clutch => clutch.At is not null).Select(clutch => (Clutch: clutch, At: clutch.At!.Value.Name)).ToList();
        var faces = ImmutableArray.CreateBuilder<AirRig>();
        foreach (var joint in assembly.Unit.Joints)
        {
            foreach (var casting in new[] { joint.Upper.Name, joint.Lower.Name })
            {
                if (SideOf(assembly.Unit, joint, casting) is not { } parts || !chambers.Exists(chamber => parts.Contains(chamber.At.Part))) continue;
                faces.Add(new AirRig(joint.Name, casting, parts, FacePorts(assembly, joint, casting)));
            }
        }

        var reached = faces.SelectMany(face => face.Ports).Select(port => port.Passage).Concat(assembly.Unit.Taps.Select(tap => tap.At.Name)).ToHashSet();
        var taps = assembly.Unit.Taps.Where(tap => Has(assembly, tap.At.Name))
            .Select(tap => new AirPort(AirPortKind.Tap, tap.Name, tap.At.Name, null, [], tap.At.Place));
        var feeds = chambers.Where(chamber => Has(assembly, chamber.At) && !reached.Contains(chamber.At)).DistinctBy(chamber => chamber.At)
            .Select(chamber => new AirPort(AirPortKind.Feed, chamber.At.ToString(), chamber.At, null, [], chamber.Clutch.Place));
        return [new AirRig(null, null, [.. assembly.Unit.Parts.Select(part => part.Name)], [.. taps, .. feeds]), .. faces];
    }

    private static ImmutableArray<AirPort> FacePorts(Assembly assembly, Joint joint, string casting)
    {
        var revision = FaultLibrary.Fitted(assembly).First(pair => pair.Part.Name == casting).Revision;
        return
        [
            .. from passage in revision.Passages
               let locations = passage.Locations.Where(use => use.Joint == joint.Name).Select(use => use.Location).ToImmutableArray()
               where !locations.IsEmpty
               select new AirPort(AirPortKind.Face, $"{casting}.{passage.Name}@{joint.Name}", new PassageName(casting, passage.Name), joint.Name, locations, passage.Place),
        ];
    }

    /// <summary>The parts on a casting's side of a joint; null where other joints go around it, so that it cannot be opened alone.</summary>
    private static ImmutableHashSet<string>? SideOf(Unit unit, Joint open, string casting)
    {
        var side = new HashSet<string> { casting };
        var others = unit.Joints.Where(joint => joint.Name != open.Name).ToList();
        for (var grows = true; grows;)
        {
            grows = false;
            foreach (var joint in others)
            {
                if (side.Contains(joint.Upper.Name) != side.Contains(joint.Lower.Name)) grows |= side.Add(joint.Upper.Name) | side.Add(joint.Lower.Name);
            }
        }

        if (side.Contains(open.Upper.Name) && side.Contains(open.Lower.Name)) return null;
        side.UnionWith(others.Where(joint => side.Contains(joint.Upper.Name)).SelectMany(joint => joint.Sheets).Select(sheet => sheet.Name));
        var inJoints = unit.Joints.SelectMany(joint => joint.Sheets.Append(joint.Upper).Append(joint.Lower)).Select(use => use.Name).ToHashSet();
        side.UnionWith(unit.Parts.Where(part => !inJoints.Contains(part.Name)).Select(part => part.Name));
        return [.. side];
    }

    private static bool Has(Assembly assembly, PassageName name) =>
        FaultLibrary.Fitted(assembly).Any(pair => pair.Part.Name == name.Part && pair.Revision.Passages.Any(passage => passage.Name == name.Passage));
}
