using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What the language knows of one kind of element before it reads any.</summary>
/// <param name="Key">The key of its section in a revision: <c>balls</c>.</param>
/// <param name="Definition">The definition in the language's schema that one of its elements keeps to: <c>ball</c>.</param>
internal sealed record Section(string Key, string Definition)
{
    /// <summary>Keys that stand beside it in the revision and belong to it.</summary>
    public ImmutableArray<string> Beside { get; init; } = [];

    /// <summary>Whether its elements' names are looked up by others: by elements, by gears.</summary>
    public bool DeclaresNames { get; init; }

    /// <summary>What sheets have instead, where sheets cannot have it; null where they can.</summary>
    public string? NotInSheets { get; init; }

    /// <summary>Where it belongs, where it and what stands beside it belong to sheets alone; null for all others.</summary>
    public (string Key, string Beside)? InSheetsAlone { get; init; }

    /// <summary>
    /// What an entry of its list lies at, in a part of that name: a revision's entries take the place of inherited ones that share one of these. Null
    /// where a list is replaced whole, or where elements go by name.
    /// </summary>
    public Func<YamlNode, string, ImmutableArray<string>>? MarksOf { get; init; }

    /// <summary>What is said when nothing is inherited that an entry could remove: <c>no opening at</c>.</summary>
    public string NotInherited { get; init; } = "";
}

/// <summary>The sections of a revision, one for each kind of element; each stands in its kind's file.</summary>
internal sealed partial class Sections : IElementKinds<List<Section>>
{
    /// <summary>Every section, in the order of <see cref="Revision"/>.</summary>
    public static ImmutableArray<Section> All { get; } = Collected();

    /// <summary>The section of a key, or null.</summary>
    public static Section? Find(string key)
    {
        foreach (var section in All)
        {
            if (section.Key == key) return section;
        }

        return null;
    }

    private static ImmutableArray<Section> Collected()
    {
        var all = new List<Section>();
        new Sections().Each(all);
        return [.. all];
    }
}
