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
    private readonly Dictionary<YamlNode, (YamlNode Value, object? Element)> known = new(ReferenceEqualityComparer.Instance);

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
            var element = Once(key, value, () =>
            {
                var sound = NameCheck.Element(key, kind, Findings);
                if (Fields.Open(value, $"{kind} {Part.Name}.{key.Text}", key.Place, Findings) is not { } fields) return null;
                var built = read(key, fields);
                fields.Close();
                return sound ? built : null;
            });
            if (element is not null) elements.Add(element);
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
            var element = Once(item, item, () =>
            {
                if (Fields.Open(item, label(item), item.Place, Findings) is not { } fields) return null;
                var built = read(item, fields);
                fields.Close();
                return built;
            });
            if (element is not null) elements.Add(element);
        }

        return elements.ToImmutable();
    }

    /// <summary>
    /// Reads an element once, however many revisions inherit it: they share the key and the value, node for node.
    /// </summary>
    /// <param name="key">The element's key, or itself when it stands in a list.</param>
    /// <param name="value">The element.</param>
    /// <param name="read">Reads it.</param>
    public T? Once<T>(YamlNode key, YamlNode value, Func<T?> read)
        where T : class
    {
        if (known.TryGetValue(key, out var before) && ReferenceEquals(before.Value, value) && before.Element is null or T) return (T?)before.Element;
        var element = read();
        known[key] = (value, element);
        return element;
    }

    /// <summary>A section of a revision, or null when it is not there; an empty value is a finding.</summary>
    public YamlNode? Section(YamlMapping content, string section) =>
        new Fields(content, $"part {Part.Name}", content.Place, Findings).Find(section);
}
