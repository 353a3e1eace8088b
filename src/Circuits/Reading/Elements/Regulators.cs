using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Regulators(YamlMapping content) => revision = revision with
    {
        Regulators = Named(content, "regulators", "regulator", (key, fields) => RegulatorReader.Read(key, fields, part), regulator => (regulator.Name, regulator.Place)),
    };
}

internal sealed partial class Sections
{
    public void Regulators(List<Section> all) => all.Add(new("regulators", "regulator"));
}

/// <summary>Reads regulators: one that names what it <c>holds</c> spills, one with <c>from</c> and <c>out</c> reduces.</summary>
internal static class RegulatorReader
{
    /// <summary>The regulator, or null with findings.</summary>
    public static Regulator? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var spills = fields.Has("holds") | fields.Has("spills-to");
        var reduces = fields.Has("from") | fields.Has("out");
        if (spills == reduces)
        {
            const string help = "One that spills has holds and spills-to; one that reduces has from and out.";
            part.Findings.Add(spills
                ? ShapeRules.MisplacedKey.At(key.Place, $"{fields.Element} cannot both spill and reduce", help)
                : ShapeRules.MissingKey.At(key.Place, $"{fields.Element} has neither holds nor from and out", help));
            foreach (var other in new[] { "to", "spring", "boost", "set-by", "port", "land", "rate", "travel", "overlap", "underlap" }) fields.Has(other);
            return null;
        }

        return spills ? Spilling(key, fields, part) : Reducing(key, fields, part);
    }

    private static Regulator.Spilling? Spilling(YamlScalar key, Fields fields, PartContext part)
    {
        Wrong(fields, part, "to", "spills-to");
        Wrong(fields, part, "set-by", "boost");
        var holds = fields.Need("holds") is { } node ? part.Passages.Find(node, fields.What("holds")) : null;
        var outlets = fields.Need("spills-to") is { } to
            ? Nodes.ListOrOne(to).Select(item => part.Passages.Find(item, fields.What("spills-to"), sump: true)).OfType<PassageUse>().ToImmutableArray()
            : [];
        if (fields.Find("spills-to") is YamlSequence { Items.IsEmpty: true } none)
            part.Findings.Add(ShapeRules.WrongType.At(none.Place, $"{fields.What("spills-to")} must name a passage", "Write spills-to: exhaust."));
        foreach (var back in outlets.Where(outlet => outlet.Name == holds?.Name))
            part.Findings.Add(NameRules.NamedTwice.At(back.Place, $"{fields.Element} spills {back.Name} into itself", "Name another passage, or exhaust."));
        var (spring, boost, port, spool) = (fields.Pressure("spring", SpoolRanges.SetPressure), Signals(fields, "boost", part), fields.Area("port", SpoolRanges.Port), Spool(fields));
        return holds is { } held && !outlets.IsEmpty ? new Regulator.Spilling(key.Text, held, outlets, spring, boost, port, key.Place) { Spool = spool } : null;
    }

    private static Regulator.Reducing? Reducing(YamlScalar key, Fields fields, PartContext part)
    {
        Wrong(fields, part, "boost", "set-by");
        var from = fields.Need("from") is { } feed ? part.Passages.Find(feed, fields.What("from")) : null;
        var outlet = fields.Need("out") is { } node ? part.Passages.Find(node, fields.What("out")) : null;
        var to = Drain(fields, part);
        var (spring, set, port, spool) = (fields.Pressure("spring", SpoolRanges.SetPressure), Signals(fields, "set-by", part), fields.Area("port", SpoolRanges.Port), Spool(fields));
        if (from is { } a && outlet is { } b && a.Name == b.Name)
            part.Findings.Add(NameRules.NamedTwice.At(b.Place, $"{fields.Element} feeds {b.Name} from itself", "Name two passages."));
        return from is { } source && outlet is { } sink && to is { } drain
            ? new Regulator.Reducing(key.Text, source, sink, drain, spring, set, port, key.Place) { Spool = spool }
            : null;
    }

    /// <summary>Where an outlet drains: <c>to</c>, or the sump.</summary>
    public static PassageUse? Drain(Fields fields, PartContext part)
    {
        if (!fields.Has("to")) return new PassageUse(PassageName.Exhaust, fields.Place);
        return fields.Find("to") is { } node ? part.Passages.Find(node, fields.What("to"), sump: true) : null;
    }

    /// <summary>The spool, once its land, spring rate and travel are all given; each alone says nothing.</summary>
    private static RegulatorSpool? Spool(Fields fields)
    {
        string[] keys = ["land", "rate", "travel"];
        var (land, rate, travel) = (fields.Area("land", SpoolRanges.Land), fields.SpringRate("rate", SpoolRanges.RegulatorRate), fields.Length("travel", SpoolRanges.Travel));
        var overlap = LapReader.Read(fields, 1);
        if (keys.All(key => !fields.Has(key))) return null;
        foreach (var key in keys.Where(key => !fields.Has(key)))
        {
            fields.Findings.Add(ShapeRules.MissingKey.At(
                fields.Place, $"{fields.Element} lacks the key {key}: land, rate and travel make a spool together", $"Add {key}: ..., or leave out all three."));
        }

        return land is { } area && rate is { } spring && travel is { } open
            ? new RegulatorSpool(area, spring, open, overlap ?? new Length(0))
            : null;
    }

    private static void Wrong(Fields fields, PartContext part, string key, string right)
    {
        if (!fields.Has(key)) return;
        part.Findings.Add(ShapeRules.UnknownKey.At(fields.PlaceOf(key), $"{fields.Element} has no key '{key}'", $"Did you mean {right}?"));
    }

    private static ImmutableArray<RegulatorSignal> Signals(Fields fields, string key, PartContext part)
    {
        if (fields.Find(key) is not { } list) return [];
        var signals = ImmutableArray.CreateBuilder<RegulatorSignal>();
        foreach (var item in Nodes.ListOrOne(list))
        {
            if (Fields.Open(item, fields.What(key).ToString(), item.Place, part.Findings) is not { } signal) continue;
            var from = signal.Need("pressure") is { } node ? part.Passages.Find(node, signal.What("pressure"), sump: true) : null;
            var ratio = signal.Number("ratio", SpoolRanges.Ratio) ?? 1;
            signal.Close();
            if (from is { } passage) signals.Add(new RegulatorSignal(passage, ratio, item.Place));
        }

        return signals.ToImmutable();
    }
}
