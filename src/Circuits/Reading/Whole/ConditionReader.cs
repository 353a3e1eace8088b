using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the conditions under which a unit has to work.</summary>
internal static class ConditionReader
{
    private static readonly KeyValuePair<string, Judged>[] Words =
    [
        new("gears", Judged.Gears),
        new("engagements", Judged.Engagements),
        new("shifts", Judged.Shifts),
    ];

    /// <summary>The conditions, in the order of the file.</summary>
    public static ImmutableArray<Condition> Read(ImmutableArray<YamlEntry> entries, FindingList findings)
    {
        var conditions = ImmutableArray.CreateBuilder<Condition>(entries.Length);
        foreach (var (key, value) in entries)
        {
            NameCheck.Other(key, "condition", findings);
            if (Fields.Open(value, $"condition {key.Text}", key.Place, findings) is not { } fields) continue;
            var pump = Speed(fields);
            var temperature = fields.Temperature("temperature", OilRanges.Temperature).Needed(fields, "temperature");
            var judges = Judged.None;
            foreach (var word in fields.List("judges"))
                judges |= fields.Word(word, "judges", Words) ?? Judged.None;
            fields.Close();
            if (pump is not null && temperature is { } celsius) conditions.Add(new Condition(key.Text, pump, celsius, judges, key.Place));
        }

        return conditions.ToImmutable();
    }

    private static PumpSpeed? Speed(Fields fields)
    {
        if (fields.Need("speed", "idle, road, or a speed: 900 rpm") is not { } node) return null;
        if (node is YamlScalar { Text: "idle" or "road" } named) return new PumpSpeed.Named(named.Text);
        return fields.Speed("speed", OilRanges.Speed) is { } speed ? new PumpSpeed.Given(speed) : null;
    }
}
