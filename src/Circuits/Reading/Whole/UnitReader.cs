using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads a whole unit: first names, then everything that refers to them.</summary>
internal sealed class UnitReader
{
    private static readonly KeyValuePair<string, DataOrigin>[] Origins =
    [
        new("invented", DataOrigin.Invented),
        new("measured", DataOrigin.Measured),
        new("published", DataOrigin.Published),
    ];

    private static readonly string[] Keys =
    [
        "format", "unit", "data", "fluid", "joints", "pump", "parts", "matched", "clutches", "gears", "shifts", "gearset",
        "taps", "conditions", "needs", "expect", "thresholds", "faults", "tests",
    ];

    private readonly YamlMapping root;
    private readonly Fields fields;
    private readonly FindingList findings;
    private readonly PartFolder folder;

    /// <param name="root">The file's mapping.</param>
    /// <param name="folder">Gives the part files.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public UnitReader(YamlMapping root, PartFolder folder, FindingList findings)
    {
        this.root = root;
        fields = new Fields(root, "", root.Place, findings);
        this.findings = findings;
        this.folder = folder;
    }

    /// <summary>The names of the rules that expectations may name; default when they are not known here.</summary>
    public Func<IEnumerable<string>>? Rules { get; init; }

    /// <summary>The unit, or null with findings.</summary>
    public Unit? Read()
    {
        if (root.IndexOf("kind") >= 0 && root.IndexOf("unit") < 0 && root.IndexOf("parts") < 0)
        {
            findings.Add(FileRules.PartFileAlone.At(root.Place, $"This file holds a part, not a unit", "Give the unit file that names it."));
            return null;
        }

        if (fields.Need("format", "1") is { } format && !FormatCheck.Holds(format, findings)) return null;
        var title = fields.NeedText("unit", "the unit's name");
        var data = fields.Word(fields.Need("data", "invented, measured or published"), "data", Origins);
        var jointEntries = fields.Entries("joints");
        var clutchEntries = fields.Entries("clutches");
        var gearEntries = fields.NeedEntries("gears", "what each gear applies");
        var matchedEntries = fields.Entries("matched");
        Count(clutchEntries, CountLimits.Clutches, "clutches");
        Count(gearEntries, CountLimits.Gears, "gears");
        Count(fields.Entries("taps"), CountLimits.Taps, "taps");
        CountCheck.Check(fields.List("shifts"), CountLimits.Shifts, new What("shifts"), item => item.Place, findings);
        var sources = new PartReader(folder, findings).Read(fields.NeedEntries("parts", "the castings, sheets and so on"));
        var names = new NameIndex(sources, Complete("parts"))
        {
            Joints = Names("joints", jointEntries),
            Clutches = Names("clutches", clutchEntries),
            Gears = Names("gears", gearEntries),
            Matched = Names("matched", matchedEntries),
            Rules = new(() => Rules is null ? new NameSet([], complete: false) : new NameSet([.. Rules()], complete: true)),
        };
        var top = new PassageScope(names, null, findings);
        var pump = ReadPump(names, top);
        var joints = new JointReader(names, findings).Read(jointEntries);
        var parts = ReadParts(sources, joints, names);
        var soundJoints = Sound(joints);
        LocationCheck.Run(soundJoints, parts, names, findings);
        HoleReach.Run(soundJoints, parts, findings);
        var assemblies = new AssemblyReader(names, findings);
        var clutches = ReadClutches(clutchEntries, top, parts);
        var unit = new Unit(title?.Text ?? "", data ?? DataOrigin.Invented, title?.Place ?? fields.Place)
        {
            Fluid = fields.Find("fluid") is { } fluid ? FluidReader.Read(fluid, fields.PlaceOf("fluid"), findings) : null,
            Joints = soundJoints,
            Pump = pump,
            Parts = parts,
            Matched = assemblies.Matched(matchedEntries),
            Clutches = clutches,
            Gears = new GearReader(names, top, findings).Read(gearEntries),
            Shifts = ShiftReader.Read(fields.List("shifts"), names, findings),
            GearSet = GearSetReader.Read(fields, names, Drums(clutches, parts), findings),
            Taps = ReadTaps(top),
            Conditions = fields.Has("conditions") ? ConditionReader.Read(fields.Entries("conditions"), findings) : Condition.Defaults,
            Needs = NeedReader.Read(fields.Entries("needs"), top, names, findings),
            Expectations = assemblies.Expectations(fields.List("expect")),
            Thresholds = fields.Find("thresholds") is { } limits
                ? ThresholdReader.Read(limits, fields.PlaceOf("thresholds"), findings)
                : Thresholds.Default,
            Faults = fields.Find("faults") is { } faults
                ? FaultReader.Read(faults, fields.PlaceOf("faults"), top, findings)
                : FaultSettings.Default,
            TestCosts = fields.Find("tests") is { } tests ? TestCostReader.Read(tests, fields.PlaceOf("tests"), findings) : TestCosts.Default,
        };
        fields.Close();
        return findings.HasErrors ? null : unit;
    }

    private void Count(ImmutableArray<YamlEntry> entries, PlausibleRange limit, string section) =>
        CountCheck.Check(entries, limit, new What(section), entry => entry.Key.Place, findings);

    private static ImmutableArray<Joint> Sound(OrderedDictionary<string, Joint?> joints)
    {
        var sound = ImmutableArray.CreateBuilder<Joint>(joints.Count);
        for (var i = 0; i < joints.Count; i++)
        {
            if (joints.GetAt(i).Value is { } joint) sound.Add(joint);
        }

        return sound.DrainToImmutable();
    }

    private static ImmutableArray<Drum> Drums(ImmutableArray<Clutch> clutches, ImmutableArray<Part> parts) =>
    [
        .. clutches.Select(clutch => clutch.Drum).OfType<Drum>(),
        .. parts.SelectMany(part => part.Revisions).ToList().SelectMany(revision => revision.Clutches).Select(change => change.Drum).OfType<Drum>(),
    ];

    private NameSet Names(string section, ImmutableArray<YamlEntry> entries) =>
        new([.. entries.Select(entry => entry.Key.Text)], Complete(section));

    /// <summary>Whether a section gives all names of its kind: it was read, or it is not there and does not hide under a misspelt key.</summary>
    private bool Complete(string section) => root.IndexOf(section) >= 0
        ? root.Find(section) is YamlMapping
        : section is not ("parts" or "gears") && root.Entries.All(entry => Keys.Contains(entry.Key.Text) || entry.Value is not YamlMapping);

    private Pump? ReadPump(NameIndex names, PassageScope top)
    {
        if (fields.Find("pump") is not { } node) return null;
        var pump = PumpReader.Read(node, fields.PlaceOf("pump"), top, findings);
        names.HasPump = true;
        names.Line = pump?.Into.Name;
        return pump;
    }

    private ImmutableArray<Part> ReadParts(ImmutableArray<PartSource> sources, OrderedDictionary<string, Joint?> joints, NameIndex names)
    {
        var parts = ImmutableArray.CreateBuilder<Part>(sources.Length);
        for (var i = 0; i < sources.Length; i++)
        {
            var source = sources[i];
            var context = new PartContext(names.Parts[i], joints, names, findings);
            parts.Add(new Part(
                source.Name, source.Kind ?? PartKind.Other, [.. source.Revisions.Select(revision => RevisionReader.Read(revision, context))], source.Place));
        }

        return parts.DrainToImmutable();
    }

    private ImmutableArray<Clutch> ReadClutches(ImmutableArray<YamlEntry> entries, PassageScope top, ImmutableArray<Part> parts)
    {
        var clutches = ImmutableArray.CreateBuilder<Clutch>(entries.Length);
        var placed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in parts)
        {
            foreach (var revision in part.Revisions)
            {
                foreach (var change in revision.Clutches)
                {
                    if (change.At is not null) placed.Add(change.Name);
                }
            }
        }

        foreach (var (key, value) in entries)
        {
            NameCheck.Element(key, "clutch", findings);
            if (Fields.Open(value, $"clutch {key.Text}", key.Place, findings) is not { } own) continue;
            clutches.Add(ClutchReader.Read(key, own, top));
            if (!own.Has("at") && !placed.Contains(key.Text))
                findings.Add(ShapeRules.MissingKey.At(key.Place, $"{own.Element} lacks the key at", "Add at: the passage that is its apply chamber."));
            own.Close();
        }

        return clutches.DrainToImmutable();
    }

    private ImmutableArray<Tap> ReadTaps(PassageScope top)
    {
        var taps = ImmutableArray.CreateBuilder<Tap>();
        foreach (var (key, value) in fields.Entries("taps"))
        {
            NameCheck.Other(key, "tap", findings);
            if (top.Find(value, new What("taps", key.Text)) is { } passage) taps.Add(new Tap(key.Text, passage));
        }

        return taps.ToImmutable();
    }
}
