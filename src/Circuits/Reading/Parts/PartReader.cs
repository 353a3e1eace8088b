using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the frame of every part: its kind, its revisions, its own file.</summary>
/// <param name="folder">Folders that part files may lie in.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class PartReader(PartFolder folder, FindingList findings)
{
    private static readonly KeyValuePair<string, PartKind>[] Kinds =
    [
        new("casting", PartKind.Casting),
        new("sheet", PartKind.Sheet),
        new("ball-set", PartKind.BallSet),
        new("solenoid-pack", PartKind.SolenoidPack),
        new("drum", PartKind.Drum),
        new("other", PartKind.Other),
    ];

    /// <summary>The parts, in the order of the file.</summary>
    public ImmutableArray<PartSource> Read(ImmutableArray<YamlEntry> entries)
    {
        var parts = ImmutableArray.CreateBuilder<PartSource>(entries.Length);
        foreach (var (key, value) in entries)
        {
            if (parts.Count >= YamlLimits.Parts)
            {
                findings.Add(FileRules.FileTooBig.At(key.Place, $"More than {YamlLimits.Parts} parts", "Is this a circuit file?"));
                throw new ReadingStopped();
            }

            NameCheck.Part(key, findings);
            parts.Add(Part(key, value));
        }

        return parts.DrainToImmutable();
    }

    private PartSource Part(YamlScalar key, YamlNode value)
    {
        var label = $"part {key.Text}";
        var broken = new PartSource(key.Text, key.Place, null, []) { Broken = true };
        var inFile = value is YamlScalar { IsNull: false };
        var node = inFile ? folder.Read((YamlScalar)value, label, findings) : value;
        if (node is null) return broken;
        var place = inFile ? node.Place : key.Place;
        if (Fields.Open(node, label, place, findings) is not { } fields) return broken;
        if (inFile && fields.Find("format") is { } format && !FormatCheck.Holds(format, findings)) return broken;
        var kind = fields.Word(fields.Need("kind", "casting, sheet, ball-set, solenoid-pack, drum or other"), "kind", Kinds);
        var content = (YamlMapping)node;
        if (!fields.Has("revisions"))
        {
            var own = content.Entries.Where(entry => entry.Key.Text is not ("kind" or "revisions") && !(inFile && entry.Key.Text == "format"));
            var only = Detached(new RevisionSource("1", place, null, new YamlMapping([.. own], content.Place)), label);
            return new PartSource(key.Text, place, kind, [only]);
        }

        ReportStrays(content, inFile, label);
        var revisions = Revisions(fields);
        return revisions.IsEmpty ? broken : new PartSource(key.Text, place, kind, revisions);
    }

    private ImmutableArray<RevisionSource> Revisions(Fields fields)
    {
        if (fields.Find("revisions") is not { } node || Nodes.Mapping(node, fields.What("revisions"), findings) is not { } mapping)
            return [];
        if (mapping.Entries.IsEmpty)
            findings.Add(ShapeRules.MissingKey.At(node.Place, $"{fields.Element} has no revision", "Add one under revisions."));
        foreach (var entry in mapping.Entries) NameCheck.Other(entry.Key, "revision", findings);
        return new RevisionMerge(mapping, fields.Element, findings).All();
    }

    /// <summary>A part without <c>revisions</c> has nothing to be based on.</summary>
    private RevisionSource Detached(RevisionSource only, string label)
    {
        if (only.Content.IndexOf("based-on") is not (>= 0 and var index)) return only;
        var entry = only.Content.Entries[index];
        findings.Add(ShapeRules.MisplacedKey.At(
            entry.Key.Place, $"{label} has one revision, so it cannot be based on another", "Write its levels under revisions."));
        return only with { Content = new YamlMapping(only.Content.Entries.RemoveAt(index), only.Content.Place) };
    }

    private void ReportStrays(YamlMapping content, bool inFile, string label)
    {
        foreach (var (key, _) in content.Entries)
        {
            if (key.Text is "kind" or "revisions" || (inFile && key.Text == "format")) continue;
            findings.Add(RevisionReader.Keys.Contains(key.Text)
                ? ShapeRules.MisplacedKey.At(
                    key.Place, $"{label} has revisions, so {key.Text} cannot stand beside them", "Move it into the first revision; later ones inherit it with based-on.")
                : Fields.UnknownKey(key, label, ["kind", "revisions"]));
        }
    }
}
