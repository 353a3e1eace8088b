using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Openings(YamlMapping content)
    {
        var except = part.Section(content, "open-except");
        revision = revision with
        {
            Openings = OpeningReader.Read(content, part),
            OpenElsewhere = except is not null,
            OpenExcept = except is null ? [] : OpeningReader.Locations(except, new What($"part {part.Part.Name}", "open-except"), part.Findings),
        };
    }
}

internal sealed partial class Sections
{
    public void Openings(List<Section> all) => all.Add(new("openings", "opening")
    {
        Beside = ["open-except"],
        InSheetsAlone = ("Openings belong to a sheet.", "It belongs to a sheet."),
        MarksOf = OpeningReader.LocationsOf,
        NotInherited = "no opening at",
    });
}

/// <summary>Reads a sheet's openings, and lists of locations.</summary>
internal static class OpeningReader
{
    private static readonly KeyValuePair<string, bool>[] TrueOrFalse = [new("true", true), new("false", false)];

    /// <summary>The openings, in the order of the file.</summary>
    public static ImmutableArray<Opening> Read(YamlMapping content, PartContext part) =>
        part.Listed(content, "openings", item => Label(item, part), (item, fields) => Opening(item, fields, part));

    /// <summary>Location numbers, one or a list; each once.</summary>
    public static ImmutableArray<NameUse> Locations(YamlNode node, What what, FindingList findings)
    {
        var locations = ImmutableArray.CreateBuilder<NameUse>();
        foreach (var item in Nodes.ListOrOne(node))
        {
            if (Nodes.Text(item, what, "location numbers", findings) is not { } id || !NameCheck.Location(id, findings)) continue;
            locations.Add(new NameUse(id.Text, id.Place));
        }

        return locations.ToImmutable();
    }

    private static Opening? Opening(YamlNode item, Fields fields, PartContext part)
    {
        if (NodeMerge.Removes(item))
        {
            foreach (var key in new[] { "at", "hole", "cup" }) fields.Has(key);
            part.Findings.Add(PartRules.NothingToRemove.At(
                item.Place, $"{fields.Element} has hole: null, and nothing is inherited that it could remove", "Give the hole's size, or leave the opening out where the sheet is blank."));
            return null;
        }

        var at = fields.Need("at", "the location's number") is { } node ? Locations(node, fields.What("at"), part.Findings) : [];
        var shape = ShapeReader.Read(fields);
        var cup = fields.Word(fields.Find("cup"), "cup", TrueOrFalse) ?? false;
        ReportTwice(at, fields);
        if (fields.Has("at") && at.IsEmpty && fields.Find("at") is YamlSequence { Items.IsEmpty: true })
            part.Findings.Add(ShapeRules.MissingKey.At(item.Place, $"{fields.Element} names no location", "Write at: and the location's number."));
        return at.IsEmpty ? null : new Opening(at, shape, cup, item.Place);
    }

    private static void ReportTwice(ImmutableArray<NameUse> at, Fields fields)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var id in at.Where(id => !seen.Add(id.Name)))
            fields.Findings.Add(NameRules.NamedTwice.At(id.Place, $"{fields.Element} names location {id.Name} twice", "Delete one of them."));
    }

    private static string Label(YamlNode item, PartContext part)
    {
        var ids = item is YamlMapping mapping && mapping.Find("at") is { } at
            ? string.Join('-', Nodes.Texts(at))
            : "";
        return ids.Length == 0 ? $"opening of {part.Part.Name}" : $"opening {part.Part.Name}@{ids}";
    }

    /// <summary>The locations of an opening as it is written.</summary>
    public static ImmutableArray<string> LocationsOf(YamlNode item, string part) =>
        item is YamlMapping mapping && mapping.Find("at") is { } at ? Nodes.Texts(at) : [];
}
