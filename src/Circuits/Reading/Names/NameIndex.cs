using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What a part has under a name, in any of its revisions.</summary>
internal sealed class PartNames(PartSource source)
{
    public string Name => source.Name;

    public Place Place => source.Place;

    public PartKind? Kind => source.Kind;

    /// <summary>Names in a broken part are not checked.</summary>
    public bool Broken => source.Broken;

    /// <summary>Passages of any revision, in the order of the file.</summary>
    public ImmutableArray<string> PassageList { get; } = Collect(source, "passages");

    /// <summary>Solenoids of any revision.</summary>
    public ImmutableArray<string> Solenoids { get; } = Collect(source, "solenoids");

    /// <summary>Lever positions of any revision.</summary>
    public ImmutableArray<string> LeverPositions { get; } = Collect(source, "lever");

    public HashSet<string> Passages { get; } = new(Collect(source, "passages"), StringComparer.Ordinal);

    public ImmutableArray<RevisionSource> Revisions => source.Revisions;

    private static ImmutableArray<string> Collect(PartSource source, string section) =>
    [
        .. source.Revisions
            .SelectMany(revision => revision.Content.Find(section) is YamlMapping mapping ? mapping.Entries : [])
            .Select(entry => entry.Key.Text)
            .Distinct(),
    ];
}

/// <summary>Every name that elements may refer to. Taken from the nodes, so that a fault inside a thing does not hide its name.</summary>
internal sealed class NameIndex
{
    private readonly Dictionary<string, PartNames> byName = new(StringComparer.Ordinal);

    /// <param name="parts">The parts.</param>
    /// <param name="joints">The entries under <c>joints</c>.</param>
    /// <param name="clutches">The entries under <c>clutches</c>.</param>
    /// <param name="gears">The entries under <c>gears</c>.</param>
    public NameIndex(
        ImmutableArray<PartSource> parts, ImmutableArray<YamlEntry> joints, ImmutableArray<YamlEntry> clutches, ImmutableArray<YamlEntry> gears)
    {
        Parts = [.. parts.Select(part => new PartNames(part))];
        foreach (var part in Parts) byName.TryAdd(part.Name, part);
        Joints = [.. joints.Select(entry => entry.Key.Text)];
        Clutches = [.. clutches.Select(entry => entry.Key.Text)];
        Gears = [.. gears.Select(entry => entry.Key.Text)];
        AnyBroken = parts.IsEmpty || parts.Any(part => part.Broken);
    }

    public ImmutableArray<PartNames> Parts { get; }

    public ImmutableArray<string> Joints { get; }

    public ImmutableArray<string> Clutches { get; }

    public ImmutableArray<string> Gears { get; }

    /// <summary>Whether some part could not be read, so that a name that is not found may be in it.</summary>
    public bool AnyBroken { get; }

    /// <summary>The passage that the pump feeds: what <c>line</c> means where no passage of that name is near; null without a pump.</summary>
    public PassageName? Line { get; set; }

    /// <summary>Whether the unit has a pump at all, even one that could not be read.</summary>
    public bool HasPump { get; set; }

    public PartNames? FindPart(string name) => byName.GetValueOrDefault(name);
}
