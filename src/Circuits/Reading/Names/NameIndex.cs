using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Reading;

/// <summary>Every name that elements may refer to. Taken from the nodes, so that a fault inside a thing does not hide its name.</summary>
internal sealed class NameIndex
{
    private readonly Dictionary<string, PartNames> byName = new(StringComparer.Ordinal);
    private readonly Groups<PartNames> passageOwners = new();
    private readonly Groups<SolenoidName> solenoids = new();

    /// <param name="parts">The parts.</param>
    /// <param name="complete">Whether <paramref name="parts"/> are all.</param>
    public NameIndex(ImmutableArray<PartSource> parts, bool complete)
    {
        Parts = [.. parts.Select(part => new PartNames(part))];
        foreach (var part in Parts) byName.TryAdd(part.Name, part);
        PartSet = new NameSet([.. Parts.Select(part => part.Name)], complete);
        AnyBroken = !complete || Parts.Any(part => part.Broken);
        foreach (var part in Parts)
        {
            foreach (var passage in part.PassageList) passageOwners.Add(passage, part);
            foreach (var solenoid in part.Solenoids)
            {
                solenoids.Add(solenoid, new SolenoidName(part, solenoid));
                solenoids.Add($"{part.Name}.{solenoid}", new SolenoidName(part, solenoid));
            }
        }

        LeverPositions = new NameSet([.. Parts.SelectMany(part => part.LeverPositions).Distinct()], !AnyBroken);
    }

    /// <summary>The parts, in the order of the file.</summary>
    public ImmutableArray<PartNames> Parts { get; }

    /// <summary>The parts' names.</summary>
    public NameSet PartSet { get; }

    /// <summary>The joints.</summary>
    public required NameSet Joints { get; init; }

    /// <summary>The clutches.</summary>
    public required NameSet Clutches { get; init; }

    /// <summary>The gears.</summary>
    public required NameSet Gears { get; init; }

    /// <summary>The matched sets.</summary>
    public required NameSet Matched { get; init; }

    /// <summary>The rules that an expectation may name.</summary>
    public required Lazy<NameSet> Rules { get; init; }

    /// <summary>The lever's positions, in any revision of any part.</summary>
    public NameSet LeverPositions { get; }

    /// <summary>Whether some part could not be read, so that a name that is not found may be in it.</summary>
    public bool AnyBroken { get; }

    /// <summary>The passage that the pump feeds: what <c>line</c> means where no passage of that name is near; null without a pump.</summary>
    public PassageName? Line { get; set; }

    /// <summary>Whether the unit has a pump at all, even one that could not be read.</summary>
    public bool HasPump { get; set; }

    /// <summary>The parts that have a passage of that name.</summary>
    public List<PartNames> PassageOwners(string passage) => passageOwners[passage];

    /// <summary>The solenoids that go by that name: their own, or <c>part.name</c>.</summary>
    public List<SolenoidName> Solenoids(string name) => solenoids[name];

    /// <summary>The part of that name, or null.</summary>
    public PartNames? FindPart(string name) => byName.GetValueOrDefault(name);
}

/// <summary>A solenoid, and the part that has it.</summary>
internal readonly record struct SolenoidName(PartNames Part, string Name);
