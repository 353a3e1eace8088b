using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What a part has under a name, in any of its revisions.</summary>
internal sealed class PartNames
{
    private readonly PartSource source;
    private readonly HashSet<string> passages;
    private readonly Dictionary<string, List<Groups<string>>> pockets = new(StringComparer.Ordinal);

    /// <param name="source">The part.</param>
    public PartNames(PartSource source)
    {
        this.source = source;
        Broken = source.Broken || source.Revisions.Any(Hides);
        PassageList = Collect(source, "passages");
        passages = new HashSet<string>(PassageList, StringComparer.Ordinal);
        Solenoids = Collect(source, "solenoids");
        LeverPositions = Collect(source, "lever");
    }

    /// <summary>The part's name.</summary>
    public string Name => source.Name;

    /// <summary>Where it is written.</summary>
    public Place Place => source.Place;

    /// <summary>What it is; null when the file does not say so properly.</summary>
    public PartKind? Kind => source.Kind;

    /// <summary>Whether names may be missing because the part could not be read whole; then names in it are not checked.</summary>
    public bool Broken { get; }

    /// <summary>Its revisions.</summary>
    public ImmutableArray<RevisionSource> Revisions => source.Revisions;

    /// <summary>Passages of any revision, in the order of the file.</summary>
    public ImmutableArray<string> PassageList { get; }

    /// <summary>Solenoids of any revision.</summary>
    public ImmutableArray<string> Solenoids { get; }

    /// <summary>Lever positions of any revision.</summary>
    public ImmutableArray<string> LeverPositions { get; }

    /// <summary>Whether any revision has that passage, or may have it.</summary>
    public bool Admits(string passage) => Broken || passages.Contains(passage);

    /// <summary>For each revision that has the passage, the joints on which it opens at each location.</summary>
    /// <param name="passage">The passage.</param>
    /// <param name="joints">The unit's joints.</param>
    public List<Groups<string>> Locations(string passage, NameSet joints)
    {
        if (pockets.TryGetValue(passage, out var known)) return known;
        var revisions = new List<Groups<string>>();
        foreach (var content in ContentsOf(passage))
        {
            var locations = new Groups<string>();
            foreach (var (joint, at) in content.Entries)
            {
                if (!joints.Has(joint.Text)) continue;
                foreach (var location in Nodes.Texts(at))
                {
                    if (!locations[location].Contains(joint.Text)) locations.Add(location, joint.Text);
                }
            }

            revisions.Add(locations);
        }

        return pockets[passage] = revisions;
    }

    /// <summary>Whether names may hide under a misspelt section, or in one that could not be read.</summary>
    private static bool Hides(RevisionSource revision) => revision.Content.Entries.Any(entry =>
        Sections.Find(entry.Key.Text) is { DeclaresNames: true }
            ? entry.Value is not YamlMapping
            : entry.Value is YamlMapping && !RevisionReader.Keys.Contains(entry.Key.Text));

    /// <summary>What the revisions say of a passage, each once.</summary>
    private List<YamlMapping> ContentsOf(string passage)
    {
        var contents = new List<YamlMapping>();
        foreach (var revision in Revisions)
        {
            if ((revision.Content.Find("passages") as YamlMapping)?.Find(passage) is YamlMapping content && !contents.Contains(content)) contents.Add(content);
        }

        return contents;
    }

    private static ImmutableArray<string> Collect(PartSource source, string section)
    {
        var names = new OrderedDictionary<string, bool>(StringComparer.Ordinal);
        foreach (var revision in source.Revisions)
        {
            if (revision.Content.Find(section) is not YamlMapping mapping) continue;
            foreach (var entry in mapping.Entries) names.TryAdd(entry.Key.Text, true);
        }

        return [.. names.Keys];
    }
}
