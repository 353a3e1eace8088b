using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads timed shifts.</summary>
internal static class ShiftReader
{
    /// <summary>The shifts, in the order of the file.</summary>
    public static ImmutableArray<ShiftProfile> Read(ImmutableArray<YamlNode> items, NameIndex names, FindingList findings)
    {
        var shifts = ImmutableArray.CreateBuilder<ShiftProfile>(items.Length);
        foreach (var item in items)
        {
            if (Fields.Open(item, Label(item), item.Place, findings) is not { } fields) continue;
            if (Shift(item, fields, names, findings) is { } shift) shifts.Add(shift);
            fields.Close();
        }

        return shifts.ToImmutable();
    }

    private static ShiftProfile? Shift(YamlNode item, Fields fields, NameIndex names, FindingList findings)
    {
        var from = Gear(fields, "from", names);
        var to = Gear(fields, "to", names);
        var commands = ImmutableArray.CreateBuilder<CommandProfile>();
        foreach (var (key, value) in fields.Entries("commands"))
        {
            var what = new What(fields.What("commands").ToString(), key.Text);
            var solenoid = NameLookup.Solenoid(key, names, fields.What("commands"), findings);
            var points = PointTable.Read(value, what, GearRanges.Time, SolenoidRanges.Pressure, findings);
            if (solenoid is { } named && !points.IsEmpty)
                commands.Add(new CommandProfile(named, [.. points.Select(point => new ProfilePoint(new Duration(point.First), new Pressure(point.Second)))]));
        }

        var torque = fields.Torque("input-torque", GearRanges.Torque);
        if (from is not { } left || to is not { } entered) return null;
        if (left.Name == entered.Name)
            findings.Add(NameRules.NamedTwice.At(entered.Place, $"{fields.Element} leaves and enters gear {entered.Name}", "Name two gears."));
        return new ShiftProfile(left, entered, commands.ToImmutable(), torque, item.Place);
    }

    private static NameUse? Gear(Fields fields, string key, NameIndex names) =>
        fields.Need(key) is { } node ? NameLookup.Find(node, names.Gears, "gear", fields.What(key), fields.Findings) : null;

    private static string Label(YamlNode item) =>
        item is YamlMapping mapping && mapping.Find("from") is YamlScalar from && mapping.Find("to") is YamlScalar to
            ? $"shift {from.Text}-{to.Text}"
            : "shift";
}
