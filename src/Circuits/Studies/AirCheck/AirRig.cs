using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.AirCheck;

/// <summary>
/// How far the unit is taken apart: whole, or open at one joint with only what lies on one side of it. Parts that lie in no joint (solenoids, drums)
/// stay with whatever side has their passages; a ball whose seat was in the open joint is out.
/// </summary>
/// <param name="Joint">The joint that is open, or null for the whole unit.</param>
/// <param name="Casting">The casting whose face can be seen there, or null.</param>
/// <param name="Parts">The names of the parts that are there.</param>
/// <param name="Ports">Where air can be let in.</param>
internal sealed record AirRig(string? Joint, string? Casting, ImmutableHashSet<string> Parts, ImmutableArray<AirPort> Ports)
{
    /// <summary>The pressure of the air in the calculation, kPa: so low that every spring holds what it holds.</summary>
    public const double Air = 1;

    /// <summary>What a passage leaves open on an open face, mm2: no matter how much, as long as it is more than a leak.</summary>
    private static readonly Area Opening = new(100);

    /// <summary>Whether two assemblies are the same on this bench.</summary>
    public bool IsSame(Assembly a, Assembly b)
    {
        if (!ReferenceEquals(a.Unit, b.Unit) && !a.Unit.Joints.Equals(b.Unit.Joints)) return false;
        for (var i = 0; i < a.Revisions.Length; i++)
        {
            if (!ReferenceEquals(a.Revisions[i], b.Revisions[i]) && Parts.Contains(a.Unit.Parts[i].Name)) return false;
        }

        return true;
    }

    /// <summary>
    /// The assembly as it lies on the bench: no pump, the lever where it is put, solenoids without current, and a gear for each place where air is let in.
    /// </summary>
    /// <param name="assembly">The assembly in the vehicle.</param>
    /// <param name="lever">The lever's position, or null.</param>
    public Assembly On(Assembly assembly, string? lever)
    {
        var unit = assembly.Unit;
        var kept = Enumerable.Range(0, unit.Parts.Length).Where(part => Parts.Contains(unit.Parts[part].Name)).ToList();
        ImmutableArray<Joint> joints = [.. unit.Joints.Where(joint => joint.Name != Joint && Parts.Contains(joint.Upper.Name) && Parts.Contains(joint.Lower.Name))];
        var bench = unit with
        {
            Pump = null,
            Parts = [.. kept.Select(part => unit.Parts[part])],
            Joints = joints,
            Matched = [],
            Gears =
            [
                .. Ports.Select(port => new GearState(port.Name, [], port.Place)
                {
                    Lever = lever is null ? null : new NameUse(lever, Place.None),
                    Signals = PassageOf(assembly, port) is { } passage ? [new FixedPressure(new PassageUse(passage, port.Place), new Pressure(Air))] : [],
                }),
            ],
        };
        if (Joint is null) return Assembly.Of(bench, assembly.Revisions);
        var there = joints.Select(joint => joint.Name).ToHashSet();
        return Assembly.Of(bench, [.. kept.Select(part => ApartRevision.Of(unit.Parts[part].Name == Casting ? Open(assembly.Revisions[part]) : assembly.Revisions[part], there))]);
    }

    /// <summary>Where else a port's passage opens on the face than where the port has it covered.</summary>
    public bool IsOpenElsewhere(Assembly assembly, AirPort port) => port.Kind == AirPortKind.Face && PassageOf(assembly, port) is { } name
        && FaceOf(assembly)!.Passages.First(passage => passage.Name == name.Passage).Locations.Any(use => use.Joint == Joint && !port.Locations.Contains(use.Location));

    /// <summary>The passage that air at a port comes into: on a face it is whatever opens there.</summary>
    private PassageName? PassageOf(Assembly assembly, AirPort port)
    {
        if (port.Kind != AirPortKind.Face) return port.Passage;
        var found = FaceOf(assembly)?.Passages.FirstOrDefault(passage => passage.Locations.Any(use => use.Joint == Joint && use.Location == port.Locations[0]));
        return found is null ? null : new PassageName(Casting!, found.Name);
    }

    private Revision? FaceOf(Assembly assembly)
    {
        for (var i = 0; i < assembly.Revisions.Length; i++)
        {
            if (assembly.Unit.Parts[i].Name == Casting) return assembly.Revisions[i];
        }

        return null;
    }

    /// <summary>Every passage that opens on the face is open to the air there. No place in the file says so, which tells these openings from all others.</summary>
    private Revision Open(Revision revision) => revision with
    {
        Restrictions =
        [
            .. revision.Restrictions,
            .. revision.Passages.Where(passage => passage.Locations.Any(use => use.Joint == Joint)).Select(passage => new Restriction(
                new PassageUse(new PassageName(Casting!, passage.Name), Place.None), new PassageUse(PassageName.Exhaust, Place.None), new Shape.Cutout(Opening), Place.None)),
        ],
    };
}
