using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads gear states.</summary>
internal sealed class GearReader(NameIndex names, PassageScope passages, FindingList findings)
{
    /// <summary>The gears, in shift order.</summary>
    public ImmutableArray<GearState> Read(ImmutableArray<YamlEntry> entries)
    {
        var gears = ImmutableArray.CreateBuilder<GearState>(entries.Length);
        foreach (var (key, value) in entries)
        {
            NameCheck.Other(key, "gear", findings);
            if (Fields.Open(value, $"gear {key.Text}", key.Place, findings) is not { } fields) continue;
            gears.Add(Gear(key, fields));
            fields.Close();
        }

        ReportCircles(gears);
        return gears.DrainToImmutable();
    }

    private GearState Gear(YamlScalar key, Fields fields)
    {
        var apply = NameLookup.List(fields.NeedList("apply", "[the clutches of the chart], or [] for none"), fields.What("apply"), findings, item =>
            NameLookup.Find(item, names.Clutches, "clutch", fields.What("apply"), findings));
        return new GearState(key.Text, apply, key.Place)
        {
            Lever = Lever(fields),
            Energize = NameLookup.List(fields.List("energize"), fields.What("energize"), findings, item =>
                NameLookup.Solenoid(item, names, fields.What("energize"), findings)),
            Commands = Commands(fields),
            Signals = Signals(fields),
            After = fields.Find("after") is { } after ? NameLookup.Find(after, names.Gears, "gear", fields.What("after"), findings) : null,
            Ratio = fields.Number("ratio", GearRanges.Ratio),
        };
    }

    private NameUse? Lever(Fields fields)
    {
        if (fields.Find("lever") is { } lever)
            return NameLookup.Find(lever, names.LeverPositions, "lever position", fields.What("lever"), findings);
        if (!names.LeverPositions.All.IsEmpty && !fields.Has("lever"))
        {
            findings.Add(GearRules.GearWithoutLever.At(
                fields.Place, $"{fields.Element} does not say where the lever stands", $"Add lever: {Quote.Any(names.LeverPositions.All)}."));
        }

        return null;
    }

    private ImmutableArray<Command> Commands(Fields fields)
    {
        var commands = ImmutableArray.CreateBuilder<Command>();
        foreach (var (key, value) in fields.Entries("commands"))
        {
            var what = new What(fields.What("commands").ToString(), key.Text);
            var solenoid = NameLookup.Solenoid(key, names, fields.What("commands"), findings);
            var current = value is YamlScalar scalar && QuantityText.Parse(scalar.Text).Unit?.Dimension == Dimension.Current;
            var amount = Sizes.Read(value, current ? SolenoidRanges.Current : SolenoidRanges.Pressure, what, findings);
            if (solenoid is not { } named) continue;
            if (current && !HasTable(named.Name))
            {
                findings.Add(GearRules.CurrentWithoutTable.At(
                    value.Place, $"{what} is a current, and no revision of that solenoid has a table", "Command a pressure, or add table: [[0 A, 0 kPa], [1 A, 600 kPa]]."));
            }

            if (amount is not { } size) continue;
            commands.Add(current ? new Command(named, null, new Current(size)) : new Command(named, new Pressure(size), null));
        }

        return commands.ToImmutable();
    }

    private bool HasTable(string solenoid) =>
        names.Solenoids(solenoid).Any(owner => owner.Part.Revisions.Any(revision =>
            (revision.Content.Find("solenoids") as YamlMapping)?.Find(owner.Name) is YamlMapping node && node.Find("table") is not null));

    private ImmutableArray<FixedPressure> Signals(Fields fields)
    {
        var signals = ImmutableArray.CreateBuilder<FixedPressure>();
        var seen = new HashSet<PassageName>();
        foreach (var (key, value) in fields.Entries("signals"))
        {
            var what = new What(fields.What("signals").ToString(), key.Text);
            var at = passages.Find(key, fields.What("signals"));
            var pressure = Sizes.Read(value, SolenoidRanges.Pressure, what, findings);
            if (at is not { } passage) continue;
            if (!seen.Add(passage.Name))
                findings.Add(NameRules.NamedTwice.At(key.Place, $"{fields.What("signals")} names {passage.Name} twice", "Delete one of them."));
            else if (pressure is { } size)
                signals.Add(new FixedPressure(passage, new Pressure(size)));
        }

        return signals.ToImmutable();
    }

    private void ReportCircles(ImmutableArray<GearState>.Builder gears)
    {
        var after = new OrderedDictionary<string, NameUse>(StringComparer.Ordinal);
        for (var i = 0; i < gears.Count; i++)
        {
            if (gears[i].After is { } before) after.Add(gears[i].Name, before);
        }

        var walked = new HashSet<string>(StringComparer.Ordinal);
        foreach (var start in after.Keys)
        {
            var path = new List<string>();
            var at = start;
            while (after.TryGetValue(at, out var before) && walked.Add(at))
            {
                path.Add(at);
                at = before.Name;
            }

            // A walk that ends on itself has found a circle; one that ends on an earlier walk has not.
            var circle = path[Math.Max(0, path.IndexOf(at))..];
            if (circle.Count == 0 || circle[0] != at) continue;
            findings.Add(GearRules.GearOrderCircle.At(
                after[at].Place,
                circle.Count == 1
                    ? Phrase.Of($"gear {at} comes after itself")
                    : Phrase.Of($"Gears come after one another in a circle: {string.Join(" after ", circle.Take(8))} after {(circle.Count > 8 ? "..." : at)}"),
                "Leave after out of one of them."));
        }
    }
}
