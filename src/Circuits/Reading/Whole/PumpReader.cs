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
            (fields.Displacement("displacement"), Speeds(fields), fields.Fraction("efficiency"), fields.Pressure("relief"));
        fields.Close();
        return into is { } fed ? new Pump(fed, displacement, speeds, efficiency, relief, place) : null;
    }

    private static ImmutableArray<KeyValuePair<string, Speed>> Speeds(Fields pump)
    {
        if (pump.Find("speed") is not { } node || Fields.Open(node, "pump: speed", pump.PlaceOf("speed"), pump.Findings) is not { } fields) return [];
        var speeds = ImmutableArray.CreateBuilder<KeyValuePair<string, Speed>>(2);
        foreach (var name in new[] { "idle", "road" })
        {
            if (fields.Speed(name) is { } speed) speeds.Add(new(name, speed));
        }

        fields.Close();
        return speeds.ToImmutable();
    }
}
