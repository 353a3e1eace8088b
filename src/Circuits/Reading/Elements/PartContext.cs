using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What every reader of a part's elements needs.</summary>
/// <param name="Part">The part.</param>
/// <param name="Joints">The unit's joints by name; null for one that could not be read.</param>
/// <param name="Names">Every name there is.</param>
/// <param name="Findings">Takes what is wrong.</param>
internal sealed record PartContext(
    PartNames Part, IReadOnlyDictionary<string, Joint?> Joints, NameIndex Names, FindingList Findings)
{
    /// <summary>Finds passages that the part's elements name.</summary>
    public PassageScope Passages { get; } = new(Names, Part, Findings);

    /// <summary>The elements of one section, by name; those that cannot be built are left out.</summary>
    /// <param name="content">The revision's content.</param>
    /// <param name="section">The section's key: <c>balls</c>.</param>
    /// <param name="kind">What messages call one of them: <c>ball</c>.</param>
    /// <param name="read">Reads one.</param>
    public ImmutableArray<T> Named<T>(YamlMapping content, string section, string kind, Func<YamlScalar, Fields, T?> read)
        where T : class
    {
        if (Section(content, section) is not { } node || Nodes.Mapping(node, new What($"part {Part.Name}", section), Findings) is not { } mapping)
            return [];
        var elements = ImmutableArray.CreateBuilder<T>(mapping.Entries.Length);
        foreach (var (key, value) in mapping.Entries)
        {
            var sound = NameCheck.Element(key, kind, Findings);
            if (Fields.Open(value, $"{kind} {Part.Name}.{key.Text}", key.Place, Findings) is not { } fields) continue;
            var element = read(key, fields);
            fields.Close();
            if (sound && element is not null) elements.Add(element);
        }

        return elements.DrainToImmutable();
    }

    /// <summary>The elements of one section that are a list; those that cannot be built are left out.</summary>
    /// <param name="content">The revision's content.</param>
    /// <param name="section">The section's key.</param>
    /// <param name="label">What messages call one of them.</param>
    /// <param name="read">Reads one.</param>
    public ImmutableArray<T> Listed<T>(YamlMapping content, string section, Func<YamlNode, string> label, Func<YamlNode, Fields, T?> read)
        where T : class
    {
        if (Section(content, section) is not { } node) return [];
        var elements = ImmutableArray.CreateBuilder<T>();
        foreach (var item in Nodes.List(node, new What($"part {Part.Name}", section), Findings))
        {
            if (Fields.Open(item, label(item), item.Place, Findings) is not { } fields) continue;
            var element = read(item, fields);
            fields.Close();
            if (element is not null) elements.Add(element);
        }

        return elements.ToImmutable();
    }

    /// <summary>A section of a revision, or null when it is not there; an empty value is a finding.</summary>
    public YamlNode? Section(YamlMapping content, string section) =>
        new Fields(content, $"part {Part.Name}", content.Place, Findings).Find(section);
}
