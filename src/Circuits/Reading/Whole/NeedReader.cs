using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads what a unit needs besides clutches.</summary>
internal static class NeedReader
{
    /// <summary>The needs, in the order of the file.</summary>
    public static ImmutableArray<Need> Read(ImmutableArray<YamlEntry> entries, PassageScope passages, NameIndex names, FindingList findings)
    {
        var needs = ImmutableArray.CreateBuilder<Need>(entries.Length);
        foreach (var (key, value) in entries)
        {
            NameCheck.Other(key, "need", findings);
            if (Fields.Open(value, $"need {key.Text}", key.Place, findings) is not { } fields) continue;
            var at = fields.Need("at", "the passage that must have it") is { } passage ? passages.Find(passage, fields.What("at")) : null;
            var (least, most, flow) = (fields.Pressure("least", OilRanges.NeededPressure), fields.Pressure("most", OilRanges.NeededPressure), fields.Flow("flow", OilRanges.NeededFlow));
            var need = at is { } place
                ? new Need(key.Text, place, key.Place) { Least = least, Most = most, Flow = flow, In = Gears("in"), Except = Gears("except") }
                : null;
            if (!fields.Has("least") && !fields.Has("most") && !fields.Has("flow"))
            {
                findings.Add(ShapeRules.MissingKey.At(
                    key.Place, $"{fields.Element} says nothing that it needs", "Add least: 30 kPa, most: 600 kPa or flow: 1.5 L/min."));
            }

            if (least?.Kilopascals > most?.Kilopascals)
                findings.Add(SizeRules.SizeOutOfRange.At(fields.PlaceOf("most"), $"{fields.Element}: most is less than least", "Correct one of them."));
            fields.Close();
            if (need is not null) needs.Add(need);

            ImmutableArray<NameUse> Gears(string word) => NameLookup.List(
                fields.List(word), fields.What(word), findings, gear => NameLookup.Find(gear, names.Gears, "gear", fields.What(word), findings));
        }

        return needs.ToImmutable();
    }
}
