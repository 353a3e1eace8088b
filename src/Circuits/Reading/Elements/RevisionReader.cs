using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the elements of one revision.</summary>
internal static class RevisionReader
{
    /// <summary>The keys of a revision.</summary>
    public static ImmutableArray<string> Keys { get; } =
    [
        "based-on", "passages", "openings", "open-except", "balls", "valves", "regulators", "solenoids", "lever",
        "restrictions", "leaks", "accumulators", "clutches", "marks",
    ];

    /// <summary>The revision.</summary>
    public static Revision Read(RevisionSource source, PartContext part)
    {
        var content = source.Content;
        foreach (var (key, _) in content.Entries)
        {
            if (Keys.Contains(key.Text)) continue;
            part.Findings.Add(Fields.UnknownKey(key, $"part {part.Part.Name}", Keys));
        }

        var sheet = part.Part.Kind == PartKind.Sheet;
        if (sheet)
            Misplaced(content, part, "passages", "A sheet has openings; passages lie in castings.");
        else if (part.Part.Kind is not null)
        {
            Misplaced(content, part, "openings", "Openings belong to a sheet.");
            Misplaced(content, part, "open-except", "It belongs to a sheet.");
        }

        var except = part.Section(content, "open-except");
        var revision = new Revision(source.Name, source.Place)
        {
            BasedOn = source.BasedOn,
            Passages = sheet ? [] : PassageReader.Read(content, part),
            Openings = OpeningReader.Read(content, part),
            OpenElsewhere = except is not null,
            OpenExcept = except is null ? [] : OpeningReader.Locations(except, new What($"part {part.Part.Name}", "open-except"), part.Findings),
            Balls = part.Named(content, "balls", "ball", (key, fields) => BallReader.Read(key, fields, part)),
            Valves = part.Named(content, "valves", "valve", (key, fields) => ValveReader.Read(key, fields, part)),
            Regulators = part.Named(content, "regulators", "regulator", (key, fields) => RegulatorReader.Read(key, fields, part)),
            Solenoids = part.Named(content, "solenoids", "solenoid", (key, fields) => SolenoidReader.Read(key, fields, part)),
            Lever = LeverReader.Read(content, part),
            Restrictions = part.Listed(content, "restrictions", item => RestrictionReader.Label("restriction", item, part), (item, fields) =>
                RestrictionReader.Read(fields, part) is var (a, b, shape) ? new Restriction(a, b, shape, item.Place) : null),
            Leaks = part.Listed(content, "leaks", item => RestrictionReader.Label("leak", item, part), (item, fields) =>
                RestrictionReader.Read(fields, part) is var (a, b, shape) ? new Leak(a, b, shape, item.Place) : null),
            Accumulators = part.Named(content, "accumulators", "accumulator", (key, fields) => AccumulatorReader.Read(key, fields, part)),
            Clutches = part.Named(content, "clutches", "clutch", (key, fields) => ClutchReader.Change(key, fields, part)),
            Marks = Marks(content, part),
        };
        ReportSharedNames(revision, part);
        return revision;
    }

    private static void Misplaced(YamlMapping content, PartContext part, string key, string help)
    {
        if (content.IndexOf(key) is not (>= 0 and var index)) return;
        part.Findings.Add(ShapeRules.MisplacedKey.At(
            content.Entries[index].Key.Place, $"part {part.Part.Name} cannot have {key}: it is a {Word(part.Part.Kind)}", help));
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

    /// <summary>Reports call elements <c>part.name</c>, whatever their kind; so no two may share a name.</summary>
    private static void ReportSharedNames(Revision revision, PartContext part)
    {
        var seen = new Dictionary<string, (string Kind, Place Place)>(StringComparer.Ordinal);
        foreach (var (name, kind, place) in Elements(revision).OrderBy(element => element.Place))
        {
            if (seen.TryAdd(name, (kind, place))) continue;
            var (otherKind, otherPlace) = seen[name];
            part.Findings.Add(NameRules.NamedTwice.At(
                place, $"{kind} {part.Part.Name}.{name} has the name of a {otherKind}", $"Rename it. If it takes the place of the {otherKind}, remove that with null.")
                with
            { Related = [new(otherPlace, $"the {otherKind}")] });
        }
    }

    private static IEnumerable<(string Name, string Kind, Place Place)> Elements(Revision revision) =>
    [
        .. revision.Balls.Select(element => (element.Name, "ball", element.Place)),
        .. revision.Valves.Select(element => (element.Name, "valve", element.Place)),
        .. revision.Regulators.Select(element => (element.Name, "regulator", element.Place)),
        .. revision.Solenoids.Select(element => (element.Name, "solenoid", element.Place)),
        .. revision.Accumulators.Select(element => (element.Name, "accumulator", element.Place)),
    ];
}
