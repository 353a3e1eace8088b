using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the gear train and checks its structure; whether it can turn is the driveline's to say.</summary>
internal sealed class GearSetReader
{
    private static readonly KeyValuePair<string, bool>[] Pinions = [new("single", false), new("double", true)];
    private static readonly string[] Members = ["sun", "carrier", "ring"];

    private readonly NameIndex names;
    private readonly FindingList findings;
    private readonly Fields fields;
    private readonly OrderedDictionary<string, bool> members = new(StringComparer.Ordinal) { ["case"] = true, ["input"] = true, ["output"] = true };
    private readonly bool membersKnown;

    private GearSetReader(Fields fields, NameIndex names, FindingList findings)
    {
        this.fields = fields;
        this.names = names;
        this.findings = findings;
        Planetaries = ReadPlanetaries();
        ReadShafts();
        membersKnown = members.Count > 3;
    }

    private ImmutableArray<Planetary> Planetaries { get; }

    /// <summary>The gear train, or null where the file has none, or with findings.</summary>
    /// <param name="unit">The file's keys.</param>
    /// <param name="names">Its names.</param>
    /// <param name="drums">Drums that turn with one of its members; each is checked.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static GearSet? Read(Fields unit, NameIndex names, ImmutableArray<Drum> drums, FindingList findings)
    {
        if (unit.Find("gearset") is not { } node)
        {
            if (!unit.Has("gearset")) DrumsAlone(drums, findings);
            return null;
        }

        var place = unit.PlaceOf("gearset");
        if (Fields.Open(node, "gearset", place, findings) is not { } fields) return null;
        var reader = new GearSetReader(fields, names, findings);
        var set = reader.Whole(place);
        foreach (var drum in drums) reader.Member(drum.Turns.Name, drum.Turns.Place, new What("drum", "turns"));
        fields.Close();
        return set;
    }

    /// <summary>Without a gear train only the input's speed is known.</summary>
    private static void DrumsAlone(ImmutableArray<Drum> drums, FindingList findings)
    {
        foreach (var drum in drums.Where(drum => drum.Turns.Name != "input"))
        {
            findings.Add(NameRules.UnknownName.At(
                drum.Turns.Place, $"drum: turns: there is no member {Quote.Text(drum.Turns.Name)}: the file has no gearset", "Write input, or add the gearset."));
        }
    }

    private GearSet? Whole(Place place)
    {
        var input = fields.Find("input") is { } drives ? Member(drives, fields.What("input")) : null;
        var output = fields.Need("output", "the member that drives the wheels") is { } driven ? Member(driven, fields.What("output")) : null;
        foreach (var (member, role) in new[] { (input, "input"), (output, "output") })
        {
            if (member is { Name: "case" or "input" or "output" } wrong)
            {
                findings.Add(GearRules.GearsetStructure.At(
                    wrong.Place, $"gearset: {role} cannot be {wrong.Name}", "Name a member, front.sun say, or a loose shaft."));
            }
        }

        if (input is { } one && output is { } other && one.Name == other.Name)
            findings.Add(GearRules.GearsetStructure.At(other.Place, $"gearset: {other.Name} is both input and output", "Name two members."));
        var joined = Joined();
        var clutches = Couplings("clutches", key => NameLookup.Known(key, names.Clutches, "clutch", fields.What("clutches"), findings));
        var taken = fields.Entries("clutches").Select(clutch => clutch.Key.Text).ToHashSet(StringComparer.Ordinal);
        var oneWay = Couplings("one-way", key =>
        {
            if (!taken.Contains(key.Text)) return NameCheck.Element(key, "one-way clutch", findings);
            findings.Add(NameRules.NamedTwice.At(key.Place, $"gearset: {key.Text} is a clutch and a one-way clutch", "Give the one-way clutch a name of its own."));
            return false;
        });
        return output is { } last ? new GearSet(Planetaries, joined, input, last, clutches, oneWay, place) : null;
    }

    private ImmutableArray<Planetary> ReadPlanetaries()
    {
        var sets = ImmutableArray.CreateBuilder<Planetary>();
        foreach (var (key, value) in fields.NeedEntries("planetaries", "{front: {sun: 34, ring: 74}}, with your teeth"))
        {
            NameCheck.Shaft(key, "planetary", findings);
            foreach (var member in Members) members.TryAdd($"{key.Text}.{member}", true);
            if (Fields.Open(value, $"planetary {key.Text}", key.Place, findings) is not { } own) continue;
            var sun = own.Count("sun", GearRanges.Teeth).Needed(own, "sun");
            var ring = own.Count("ring", GearRanges.Teeth).Needed(own, "ring");
            var pairs = own.Word(own.Find("pinions"), "pinions", Pinions) ?? false;
            own.Close();
            if (sun is not { } inner || ring is not { } outer) continue;
            if (outer <= inner)
                findings.Add(GearRules.GearsetStructure.At(own.PlaceOf("ring"), $"{own.Element}: its ring ({outer} teeth) is not larger than its sun ({inner})", "Correct the teeth; are they exchanged?"));
            sets.Add(new Planetary(key.Text, inner, outer, pairs, key.Place));
        }

        return sets.ToImmutable();
    }

    private void ReadShafts()
    {
        foreach (var item in fields.List("shafts"))
        {
            if (Nodes.Text(item, fields.What("shafts"), "a name", findings) is not { } name || !NameCheck.Shaft(name, "shaft", findings)) continue;
            if (!members.TryAdd(name.Text, true))
                findings.Add(NameRules.NamedTwice.At(name.Place, $"gearset: shafts names {name.Text} twice", "Delete one of them."));
        }
    }

    private ImmutableArray<Coupling> Joined()
    {
        var joined = ImmutableArray.CreateBuilder<Coupling>();
        var what = fields.What("joined");
        foreach (var item in fields.List("joined"))
        {
            if (item is not YamlSequence { Items.Length: > 1 } list)
            {
                Nodes.Wrong(item, what, "pairs of members", "Write joined: [[front.carrier, rear.ring]].", findings);
                continue;
            }

            // Three members that turn together are two pairs.
            for (var i = 1; i < list.Items.Length; i++)
            {
                if (Pair("", list.Items[i - 1], list.Items[i], what, item.Place) is { } pair) joined.Add(pair);
            }
        }

        return joined.ToImmutable();
    }

    private ImmutableArray<Coupling> Couplings(string key, Func<YamlScalar, bool> isName)
    {
        var couplings = ImmutableArray.CreateBuilder<Coupling>();
        foreach (var (name, value) in fields.Entries(key))
        {
            var known = isName(name);
            var what = new What(fields.What(key).ToString(), name.Text);
            if (value is not YamlSequence { Items: [var a, var b] })
                Nodes.Wrong(value, what, "two members", $"Write {name.Text}: [rear.ring, case].", findings);
            else if (Pair(name.Text, a, b, what, name.Place) is { } pair && known)
                couplings.Add(pair);
        }

        return couplings.ToImmutable();
    }

    private Coupling? Pair(string name, YamlNode first, YamlNode second, What what, Place place)
    {
        if (Member(first, what) is not { } a || Member(second, what) is not { } b) return null;
        if (a.Name != b.Name) return new Coupling(name, a, b, place);
        findings.Add(GearRules.GearsetStructure.At(b.Place, $"{what} ties {b.Name} to itself", "Name two members."));
        return null;
    }

    private Member? Member(YamlNode node, What what)
    {
        return Nodes.Text(node, what, "a member", findings) is { } name ? Member(name.Text, name.Place, what) : null;
    }

    private Member? Member(string name, Place place, What what)
    {
        if (members.ContainsKey(name)) return new Member(name, place);
        if (!membersKnown) return null;
        findings.Add(NameRules.UnknownName.At(
            place, $"{what}: there is no member {Quote.Text(name)}", Quote.Meant(DidYouMean.Find(name, members.Keys), "member", members.Keys)));
        return null;
    }
}
