using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Passages(YamlMapping content) =>
        revision = revision with { Passages = part.Part.Kind == PartKind.Sheet ? [] : PassageReader.Read(content, part) };
}

internal sealed partial class Sections
{
    public void Passages(List<Section> all) => all.Add(new("passages", "passage") { DeclaresNames = true, NotInSheets = "A sheet has openings; passages lie in castings." });
}

/// <summary>Reads a revision's passages.</summary>
internal static class PassageReader
{
    private static readonly string[] OwnKeys = ["circuit", "length", "section", "volume"];

    /// <summary>The passages, in the order of the file.</summary>
    public static ImmutableArray<Passage> Read(YamlMapping content, PartContext part)
    {
        if (part.Section(content, "passages") is not { } node
            || Nodes.Mapping(node, new What($"part {part.Part.Name}", "passages"), part.Findings) is not { } mapping)
            return [];
        var passages = ImmutableArray.CreateBuilder<Passage>(mapping.Entries.Length);
        foreach (var (key, value) in mapping.Entries)
        {
            if (part.Once(key, value, () => Passage(key, value, part)) is { } passage) passages.Add(passage);
        }

        ReportTaken(passages, part);
        return passages.DrainToImmutable();
    }

    private static Passage? Passage(YamlScalar key, YamlNode value, PartContext part)
    {
        NameCheck.Passage(key, part.Findings);
        var label = $"passage {part.Part.Name}.{key.Text}";
        if (value is YamlScalar { IsNull: true })
        {
            part.Findings.Add(ShapeRules.EmptyValue.At(
                key.Place, $"{label} has no value", "Write {} for a passage that opens on no joint; null only removes an inherited one."));
            return null;
        }

        if (Fields.Open(value, label, key.Place, part.Findings) is not { } fields) return null;
        var locations = ImmutableArray.CreateBuilder<LocationUse>();
        foreach (var (joint, ids) in ((YamlMapping)value).Entries)
        {
            if (OwnKeys.Contains(joint.Text) || !LiesIn(joint, fields, part)) continue;
            foreach (var id in OpeningReader.Locations(ids, fields.What(joint.Text), part.Findings))
                locations.Add(new LocationUse(joint.Text, id.Name, id.Place));
        }

        return new Passage(key.Text, fields.Text("circuit")?.Text ?? key.Text, locations.ToImmutable(), key.Place)
        {
            Length = fields.Length("length", PassageRanges.Length),
            Section = fields.Area("section", PassageRanges.Section),
            Volume = fields.Volume("volume", PassageRanges.Volume),
        };
    }

    private static bool LiesIn(YamlScalar joint, Fields fields, PartContext part)
    {
        if (!part.Joints.TryGetValue(joint.Text, out var known))
        {
            if (!part.Names.Joints.Complete) return false;
            string[] words = [.. part.Joints.Keys, .. OwnKeys];
            part.Findings.Add(NameRules.UnknownName.At(
                joint.Place, $"{fields.Element}: there is no joint {Quote.Text(joint.Text)}", Quote.Meant(DidYouMean.Find(joint.Text, words), "joint", words)));
            return false;
        }

        if (known is null || known.Upper.Name == part.Part.Name || known.Lower.Name == part.Part.Name) return true;
        part.Findings.Add(PartRules.NotInJoint.At(
            joint.Place, $"{fields.Element} opens on joint {joint.Text}, which lies between {known.Upper.Name} and {known.Lower.Name}", "Name a joint of this part."));
        return false;
    }

    private static void ReportTaken(IEnumerable<Passage> passages, PartContext part)
    {
        var taken = new Dictionary<(string Joint, string Location), (string Passage, Place Place)>();
        foreach (var passage in passages)
        {
            foreach (var use in passage.Locations)
            {
                if (taken.TryAdd((use.Joint, use.Location), (passage.Name, use.Place))) continue;
                var (other, place) = taken[(use.Joint, use.Location)];
                var finding = other == passage.Name
                    ? NameRules.NamedTwice.At(
                        use.Place, $"passage {part.Part.Name}.{other} names location {use.Location} of joint {use.Joint} twice", "Delete one of them.")
                    : PartRules.LocationTakenTwice.At(
                        use.Place, $"Location {use.Location} of joint {use.Joint} lies in two passages of {part.Part.Name}: {other} and {passage.Name}", "Take it out of one of them.");
                part.Findings.Add(finding with { Related = [new(place, $"in {other}")] });
            }
        }
    }
}
