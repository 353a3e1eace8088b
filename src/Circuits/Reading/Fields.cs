using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>
/// The keys of one element. Every key that is asked for is known; <see cref="Close"/> reports those that nobody asked for.
/// </summary>
/// <param name="mapping">The keys and values.</param>
/// <param name="element">What messages call the element.</param>
/// <param name="place">Where the element is written.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class Fields(YamlMapping mapping, string element, Place place, FindingList findings)
{
    private readonly List<string> asked = new(12);

    /// <summary>What messages call the element.</summary>
    public string Element => element;

    /// <summary>Where the element is written.</summary>
    public Place Place => place;

    /// <summary>Where findings go.</summary>
    public FindingList Findings => findings;

    /// <summary>The element's keys, or null with a finding when the node is no mapping.</summary>
    public static Fields? Open(YamlNode node, string element, Place place, FindingList findings) =>
        Nodes.Mapping(node, new What(element), findings) is { } mapping ? new Fields(mapping, element, place, findings) : null;

    /// <summary>How messages name the value of a key.</summary>
    public What What(string key) => new(element, key);

    /// <summary>Whether the key is there, with whatever value.</summary>
    public bool Has(string key)
    {
        asked.Add(key);
        return mapping.IndexOf(key) >= 0;
    }

    /// <summary>The key's value, or null when it is not there or has no value; the latter is a finding.</summary>
    public YamlNode? Find(string key)
    {
        asked.Add(key);
        var node = mapping.Find(key);
        if (node is not YamlScalar { IsNull: true }) return node;
        findings.Add(ShapeRules.EmptyValue.At(
            node.Place, $"{What(key)} has no value", "Give a value, or delete the key. An empty list is [], an empty mapping {}."));
        return null;
    }

    /// <summary>The key's value, or null with a finding.</summary>
    /// <param name="key">The key.</param>
    /// <param name="hint">What the help offers as its value.</param>
    public YamlNode? Need(string key, string hint = "...")
    {
        var node = Find(key);
        if (node is null && mapping.IndexOf(key) < 0)
            findings.Add(ShapeRules.MissingKey.At(place, $"{Start} lacks the key {key}", $"Add {key}: {hint}"));
        return node;
    }

    /// <summary>The place of the key, or of the element when the key is not there.</summary>
    public Place PlaceOf(string key) => mapping.IndexOf(key) is var index and >= 0 ? mapping.Entries[index].Key.Place : place;

    /// <summary>The text behind the key, or null.</summary>
    public YamlScalar? Text(string key) => Find(key) is { } node ? Nodes.Text(node, What(key), "text", findings) : null;

    /// <summary>The text behind the key, or null with a finding.</summary>
    public YamlScalar? NeedText(string key, string hint = "...") => Need(key, hint) is { } node ? Nodes.Text(node, What(key), "text", findings) : null;

    /// <summary>The items behind the key; none when it is not there.</summary>
    public ImmutableArray<YamlNode> List(string key) => Find(key) is { } node ? Nodes.List(node, What(key), findings) : [];

    /// <summary>The items behind the key, or none with a finding.</summary>
    public ImmutableArray<YamlNode> NeedList(string key, string hint = "...") => Need(key, hint) is { } node ? Nodes.List(node, What(key), findings) : [];

    /// <summary>The entries behind the key; none when it is not there.</summary>
    public ImmutableArray<YamlEntry> Entries(string key) =>
        Find(key) is { } node && Nodes.Mapping(node, What(key), findings) is { } inner ? inner.Entries : [];

    /// <summary>The entries behind the key, or none with a finding.</summary>
    public ImmutableArray<YamlEntry> NeedEntries(string key, string hint = "...") =>
        Need(key, hint) is { } node && Nodes.Mapping(node, What(key), findings) is { } inner ? inner.Entries : [];

    /// <summary>What one of a few fixed words stands for, or null with a finding when it is another word.</summary>
    public T? Word<T>(YamlNode? node, string key, ReadOnlySpan<KeyValuePair<string, T>> words)
        where T : struct
    {
        if (node is null) return null;
        var names = new List<string>(words.Length);
        var scalar = node as YamlScalar;
        foreach (var (name, value) in words)
        {
            if (scalar?.Text == name) return value;
            names.Add(name);
        }

        if (scalar is null)
            Nodes.Wrong(node, What(key), Quote.Any(names), "Use one of these words.", findings);
        else
            findings.Add(ShapeRules.UnknownWord.At(
                node.Place, $"{What(key)} must be {Quote.Any(names)}, found {scalar.Describe()}", Meant(scalar.Text, names)));
        return null;
    }

    /// <summary>Reports the keys that nobody asked for.</summary>
    public void Close()
    {
        foreach (var entry in mapping.Entries)
        {
            if (asked.Contains(entry.Key.Text)) continue;
            findings.Add(UnknownKey(entry.Key, element, asked));
        }
    }

    /// <summary>The finding for a key that an element does not have.</summary>
    public static Finding UnknownKey(YamlScalar key, string element, IEnumerable<string> known)
    {
        var help = key.Text == "<<"
            ? "Merging with << is not part of the language; use based-on."
            : Quote.Meant(DidYouMean.Find(key.Text, known), "key", known.Distinct());
        var owner = element.Length == 0 ? "The file" : element;
        return ShapeRules.UnknownKey.At(key.Place, $"{owner} has no key {Quote.Text(key.Text)}", help);
    }

    private string Start => element.Length == 0 ? "The file" : element;

    private static string Meant(string word, IEnumerable<string> names) =>
        DidYouMean.Find(word, names) is { } close ? $"Did you mean {close}?" : "Use one of these words.";

}
