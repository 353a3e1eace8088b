using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the pump.</summary>
internal static class PumpReader
{
    /// <summary>The pump, or null with findings.</summary>
    public static Pump? Read(YamlNode node, Place place, PassageScope passages, FindingList findings)
    {
        if (Fields.Open(node, "pump", place, findings) is not { } fields) return null;
        var into = fields.Need("into") is { } passage ? passages.Find(passage, fields.What("into")) : null;
        var (displacement, speeds, efficiency, relief) =
            (
            fields.Displacement("displacement", OilRanges.Displacement), Speeds(fields), fields.Fraction("efficiency", OilRanges.Efficiency),
            fields.Pressure("relief", OilRanges.PumpPressure));
        var test = Test(fields);
        fields.Close();
        return into is { } fed ? new Pump(fed, displacement, speeds, efficiency, relief, place) { MeasuredAt = test } : null;
    }

    private static PumpTest? Test(Fields pump)
    {
        const string key = "measured-at";
        if (pump.Find(key) is not { } node || Fields.Open(node, "pump: measured-at", pump.PlaceOf(key), pump.Findings) is not { } fields) return null;
        var pressure = fields.Pressure("pressure", OilRanges.PumpPressure).Needed(fields, "pressure");
        var speed = fields.Speed("speed", OilRanges.Speed).Needed(fields, "speed");
        var temperature = fields.Temperature("temperature", OilRanges.Temperature);
        fields.Close();
        if (!pump.Has("efficiency"))
        {
            pump.Findings.Add(ShapeRules.MissingKey.At(
                pump.PlaceOf(key), $"pump has measured-at but no efficiency", "Add efficiency: 0.85, what was measured there, or delete measured-at."));
        }

        return pressure is { } against && speed is { } turns ? new PumpTest(against, turns, temperature) : null;
    }

    private static ImmutableArray<KeyValuePair<string, Speed>> Speeds(Fields pump)
    {
        if (pump.Find("speed") is not { } node || Fields.Open(node, "pump: speed", pump.PlaceOf("speed"), pump.Findings) is not { } fields) return [];
        var speeds = ImmutableArray.CreateBuilder<KeyValuePair<string, Speed>>(2);
        foreach (var name in new[] { "idle", "road" })
        {
            if (fields.Speed(name, OilRanges.Speed) is { } speed) speeds.Add(new(name, speed));
        }

        fields.Close();
        return speeds.ToImmutable();
    }
}
