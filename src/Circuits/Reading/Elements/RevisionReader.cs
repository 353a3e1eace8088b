using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the elements of one revision; how each kind is read stands in that kind's file.</summary>
internal sealed partial class RevisionReader : IElementKinds<YamlMapping>
{
    private readonly PartContext part;

    /// <summary>Elements that reports call <c>part.name</c>, whatever their kind.</summary>
    private readonly List<(string Name, string Kind, Place Place)> named = [];
    private Revision revision;

    private RevisionReader(RevisionSource source, PartContext part)
    {
        this.part = part;
        revision = new Revision(source.Name, source.Place) { BasedOn = source.BasedOn };
    }

    /// <summary>The keys of a revision.</summary>
    public static ImmutableArray<string> Keys { get; } =
        ["based-on", .. Sections.All.SelectMany(section => section.Beside.Insert(0, section.Key)), "marks"];

    /// <summary>The revision.</summary>
    public static Revision Read(RevisionSource source, PartContext part)
    {
        var content = source.Content;
        foreach (var (key, _) in content.Entries)
        {
            if (Keys.Contains(key.Text)) continue;
            part.Findings.Add(Fields.UnknownKey(key, $"part {part.Part.Name}", Keys));
        }

        foreach (var section in Sections.All) Misplaced(section, content, part);
        var reader = new RevisionReader(source, part);
        reader.Each(content);
        reader.revision = reader.revision with { Marks = Marks(content, part) };
        reader.ReportSharedNames();
        return reader.revision;
    }

    private static void Misplaced(Section section, YamlMapping content, PartContext part)
    {
        var sheet = part.Part.Kind == PartKind.Sheet;
        if (sheet && section.NotInSheets is { } instead) Report(section.Key, instead);
        if (sheet || part.Part.Kind is null || section.InSheetsAlone is not { } help) return;
        Report(section.Key, help.Key);
        foreach (var beside in section.Beside) Report(beside, help.Beside);

        void Report(string key, string text)
        {
            if (content.IndexOf(key) is not (>= 0 and var index)) return;
            part.Findings.Add(ShapeRules.MisplacedKey.At(
                content.Entries[index].Key.Place, $"part {part.Part.Name} cannot have {key}: it is a {Word(part.Part.Kind)}", text));
        }
    }

    private static string Word(PartKind? kind) => kind switch
    {
        PartKind.Casting => "casting",
        PartKind.Sheet => "sheet",
        PartKind.BallSet => "ball-set",
        PartKind.SolenoidPack => "solenoid-pack",
        PartKind.Drum => "drum",
        _ => "part of another kind",
    };

    private static ImmutableArray<NameUse> Marks(YamlMapping content, PartContext part)
    {
        if (part.Section(content, "marks") is not { } node) return [];
        var what = new What($"part {part.Part.Name}", "marks");
        var marks = ImmutableArray.CreateBuilder<NameUse>();
        foreach (var item in Nodes.List(node, what, part.Findings))
        {
            if (Nodes.Text(item, what, "what a person can see", part.Findings) is { } mark) marks.Add(new NameUse(mark.Text, mark.Place));
        }

        return marks.ToImmutable();
    }

    /// <summary>The elements of a section whose names no others of their part may have.</summary>
    private ImmutableArray<T> Named<T>(YamlMapping content, string section, string kind, Func<YamlScalar, Fields, T?> read, Func<T, (string Name, Place Place)> nameOf)
        where T : class
    {
        var elements = part.Named(content, section, kind, read);
        foreach (var element in elements)
        {
            var (name, place) = nameOf(element);
            named.Add((name, kind, place));
        }

        return elements;
    }

    private void ReportSharedNames()
    {
        var seen = new Dictionary<string, (string Kind, Place Place)>(StringComparer.Ordinal);
        foreach (var (name, kind, place) in named.OrderBy(element => element.Place))
        {
            if (seen.TryAdd(name, (kind, place))) continue;
            var (otherKind, otherPlace) = seen[name];
            part.Findings.Add(NameRules.NamedTwice.At(
                place, $"{kind} {part.Part.Name}.{name} has the name of a {otherKind}", $"Rename it. If it takes the place of the {otherKind}, remove that with null.")
                with
            { Related = [new(otherPlace, $"the {otherKind}")] });
        }
    }
}
