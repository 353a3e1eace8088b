using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Reading.Yaml;

/// <summary>A node of a circuit file, with its place.</summary>
internal abstract class YamlNode(Place place)
{
    /// <summary>Where the node begins.</summary>
    public Place Place { get; } = place;

    /// <summary>What a message calls a node of this kind.</summary>
    public abstract string Describe();
}

/// <summary>A piece of text. The language knows no other scalars: <c>yes</c> and <c>1</c> are text.</summary>
/// <param name="text">The text.</param>
/// <param name="plain">Whether it stands without quotes.</param>
/// <param name="place">Where it begins.</param>
internal sealed class YamlScalar(string text, bool plain, Place place) : YamlNode(place)
{
    public string Text { get; } = text;

    /// <summary>Whether it is an empty value: nothing at all, <c>null</c> or <c>~</c>, without quotes.</summary>
    public bool IsNull { get; } = plain && text is "" or "~" or "null" or "Null" or "NULL";

    public override string Describe() => IsNull ? "nothing" : Quote.Text(Text);
}

/// <summary>A list.</summary>
/// <param name="items">Its items.</param>
/// <param name="place">Where it begins.</param>
internal sealed class YamlSequence(ImmutableArray<YamlNode> items, Place place) : YamlNode(place)
{
    public ImmutableArray<YamlNode> Items { get; } = items;

    public override string Describe() => Items.IsEmpty ? "an empty list" : $"a list of {Items.Length}";
}

/// <summary>A key and its value.</summary>
internal readonly record struct YamlEntry(YamlScalar Key, YamlNode Value);

/// <summary>Keys with values, in the order of the file; no key twice.</summary>
/// <param name="entries">The entries.</param>
/// <param name="place">Where it begins.</param>
internal sealed class YamlMapping(ImmutableArray<YamlEntry> entries, Place place) : YamlNode(place)
{
    // Most mappings have a handful of keys; a table pays off for long ones only.
    private const int TableFrom = 9;

    private readonly Dictionary<string, int>? table = entries.Length < TableFrom ? null : Tabulate(entries);

    public ImmutableArray<YamlEntry> Entries { get; } = entries;

    public override string Describe() => "a mapping";

    /// <summary>The index of the entry with that key, or -1.</summary>
    public int IndexOf(string key)
    {
        if (table is not null) return table.GetValueOrDefault(key, -1);
        for (var i = 0; i < Entries.Length; i++)
        {
            if (Entries[i].Key.Text == key) return i;
        }

        return -1;
    }

    /// <summary>The value of that key, or null.</summary>
    public YamlNode? Find(string key) => IndexOf(key) is var index and >= 0 ? Entries[index].Value : null;

    private static Dictionary<string, int> Tabulate(ImmutableArray<YamlEntry> entries)
    {
        var table = new Dictionary<string, int>(entries.Length, StringComparer.Ordinal);
        for (var i = 0; i < entries.Length; i++) table.TryAdd(entries[i].Key.Text, i);
        return table;
    }
}
