using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads what a file says about faults: how likely they are, how bad, and where oil may cross.</summary>
internal static class FaultReader
{
    private static string[] Words => [.. FaultKinds.All.Select(kind => kind.Word)];

    /// <summary>The settings; what the file leaves out has its default.</summary>
    public static FaultSettings Read(YamlNode node, Place place, PassageScope top, FindingList findings)
    {
        var standard = FaultSettings.Default;
        if (Fields.Open(node, "faults", place, findings) is not { } fields) return standard;
        var read = new FaultSettings
        {
            Weights = Weights(fields, findings),
            Named = Named(fields, findings),
            Near = fields.Length("near", FaultRanges.Near) ?? standard.Near,
            Neighbours = Neighbours(fields, top, findings),
            SealLeak = fields.Area("seal-leak", FaultRanges.Leak) ?? standard.SealLeak,
            PassageLeak = fields.Area("passage-leak", FaultRanges.Leak) ?? standard.PassageLeak,
            Exhaust = fields.Area("exhaust", FaultRanges.Leak) ?? standard.Exhaust,
            Clog = fields.Fraction("clog", GearRanges.Share) ?? standard.Clog,
            Wear = fields.Number("wear", FaultRanges.Wear) ?? standard.Wear,
        };
        fields.Close();
        return read;
    }

    private static ImmutableArray<KeyValuePair<FaultKind, double>> Weights(Fields fields, FindingList findings)
    {
        var weights = ImmutableArray.CreateBuilder<KeyValuePair<FaultKind, double>>();
        foreach (var (key, value) in fields.Entries("weights"))
        {
            if (Kind(key, "faults: weights", findings) is not { } kind) continue;
            if (Sizes.Number(value, FaultRanges.Weight, new What("faults: weights", key.Text), findings) is { } weight)
                weights.Add(KeyValuePair.Create(kind, weight));
        }

        return weights.ToImmutable();
    }

    private static ImmutableArray<NamedWeight> Named(Fields fields, FindingList findings)
    {
        var named = ImmutableArray.CreateBuilder<NamedWeight>();
        foreach (var (key, value) in fields.Entries("named"))
        {
            var space = key.Text.IndexOf(' ', StringComparison.Ordinal);
            if (space < 0)
            {
                findings.Add(ShapeRules.UnknownWord.At(
                    key.Place, $"faults: named: {Quote.Text(key.Text)} names no fault", "Write the kind and what it is about: hole-plugged plate@22."));
                continue;
            }

            var kind = new YamlScalar(key.Text[..space], plain: false, key.Place);
            if (Kind(kind, "faults: named", findings) is null) continue;
            if (Sizes.Number(value, FaultRanges.Weight, new What("faults: named", key.Text), findings) is { } weight)
                named.Add(new NamedWeight(key.Text, weight, key.Place));
        }

        return named.ToImmutable();
    }

    private static FaultKind? Kind(YamlScalar word, string what, FindingList findings)
    {
        foreach (var kind in FaultKinds.All)
        {
            if (kind.Word == word.Text) return kind.Kind;
        }

        findings.Add(ShapeRules.UnknownWord.At(
            word.Place, $"{what}: there is no kind of fault {Quote.Text(word.Text)}", Quote.Meant(DidYouMean.Find(word.Text, Words), "kind", Words)));
        return null;
    }

    private static ImmutableArray<NeighbourPair> Neighbours(Fields fields, PassageScope top, FindingList findings)
    {
        var pairs = ImmutableArray.CreateBuilder<NeighbourPair>();
        foreach (var item in fields.List("neighbours"))
        {
            var what = fields.What("neighbours");
            if (item is not YamlSequence { Items: [var first, var second] })
            {
                Nodes.Wrong(item, what, "two passages", "Write neighbours: [[body.a, body.b]].", findings);
                continue;
            }

            if (top.Find(first, what) is not { } a || top.Find(second, what) is not { } b) continue;
            if (a.Name == b.Name)
                findings.Add(NameRules.NamedTwice.At(b.Place, $"{what} names {b.Name} twice", "Name two passages."));
            else
                pairs.Add(new NeighbourPair(a, b, item.Place));
        }

        return pairs.ToImmutable();
    }
}
