using System.Collections.Immutable;
using System.Text;

namespace Circuits.Tests.Properties;

/// <summary>Writes a spec as a circuit file.</summary>
internal static class SpecText
{
    /// <summary>The unit's file.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="basedOn">Whether later revisions are written as what differs from the first.</param>
    public static string Of(UnitSpec unit, bool basedOn = false)
    {
        var text = new StringBuilder();
        text.Append("format: 1\nunit: ").Append(unit.Name).Append("\ndata: invented\n");
        if (!unit.Joints.IsEmpty)
        {
            text.Append("joints:\n");
            foreach (var joint in unit.Joints)
            {
                text.Append("  ").Append(joint.Name).Append(": ").Append(ElementText.Flow(
                    [("between", ElementText.List([joint.Upper, joint.Lower])), ("sheets", ElementText.List(joint.Sheets))])).Append('\n');
            }
        }

        if (unit.Pump is { } pump)
        {
            text.Append("pump: {into: ").Append(pump.Into);
            if (pump.Relief is { } relief) text.Append(", relief: ").Append(ElementText.Number(relief)).Append(" kPa");
            text.Append("}\n");
        }

        text.Append("parts:\n");
        foreach (var part in unit.Parts)
        {
            text.Append("  ").Append(part.Name).Append(':');
            if (part.File is { } file) text.Append(' ').Append(file).Append('\n');
            else text.Append('\n').Append(Part(part, "    ", basedOn));
        }

        AddWhole(text, unit);
        return text.ToString();
    }

    /// <summary>The file of a part that has one of its own.</summary>
    public static string FileOf(PartSpec part, bool basedOn = false) => $"format: 1\n{Part(part, "", basedOn)}";

    private static void AddWhole(StringBuilder text, UnitSpec unit)
    {
        if (!unit.Matched.IsEmpty)
        {
            text.Append("matched:\n");
            foreach (var set in unit.Matched)
            {
                text.Append("  ").Append(set.Name).Append(": ").Append(ElementText.Flow(
                    unit.Parts.Zip(set.Revisions, (part, revision) => (part.Name, revision)))).Append('\n');
            }
        }

        if (!unit.Clutches.IsEmpty)
        {
            text.Append("clutches:\n");
            foreach (var clutch in unit.Clutches)
                text.Append("  ").Append(clutch.Name).Append(": ").Append(ElementText.Flow(Clutch(clutch))).Append('\n');
        }

        text.Append("gears:\n");
        foreach (var gear in unit.Gears)
            text.Append("  ").Append(gear.Name).Append(": ").Append(ElementText.Flow(Gear(gear))).Append('\n');
    }

    private static IEnumerable<(string, string)> Clutch(ClutchSpec clutch)
    {
        yield return ("at", clutch.At.ToString());
        yield return ("area", $"{ElementText.Number(clutch.Area)} mm2");
        if (clutch.Release is not { } release) yield break;
        yield return ("release", release.ToString());
        yield return ("release-area", $"{ElementText.Number(clutch.ReleaseArea)} mm2");
    }

    private static IEnumerable<(string, string)> Gear(GearSpec gear)
    {
        if (gear.Lever is { } lever) yield return ("lever", lever);
        if (!gear.Energize.IsEmpty) yield return ("energize", ElementText.List(gear.Energize));
        if (!gear.Commands.IsEmpty)
            yield return ("commands", ElementText.Flow(gear.Commands.Select(pair => (pair.Solenoid, $"{ElementText.Number(pair.Kilopascals)} kPa"))));
        if (!gear.Signals.IsEmpty)
            yield return ("signals", ElementText.Flow(gear.Signals.Select(pair => (pair.At.ToString(), $"{ElementText.Number(pair.Kilopascals)} kPa"))));
        yield return ("apply", ElementText.List(gear.Apply));
    }

    private static string Part(PartSpec part, string indent, bool basedOn)
    {
        var text = new StringBuilder();
        text.Append(indent).Append("kind: ").Append(part.Kind).Append('\n').Append(indent).Append("revisions:\n");
        foreach (var revision in part.Revisions)
        {
            text.Append(indent).Append("  ").Append(revision.Name).Append(":\n");
            var lines = basedOn && !ReferenceEquals(revision, part.Revisions[0])
                ? SpecDifference.Lines(part.Name, part.Revisions[0], revision)
                : Lines(part.Name, revision);
            foreach (var line in lines.DefaultIfEmpty("marks: []")) text.Append(indent).Append("    ").Append(line).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A revision in full.</summary>
    private static IEnumerable<string> Lines(string part, RevisionSpec revision)
    {
        foreach (var (key, elements) in Named(part, revision))
        {
            if (elements.Count == 0) continue;
            yield return $"{key}:";
            foreach (var (name, value) in elements) yield return $"  {name}: {value.Text}";
        }

        if (!revision.Openings.IsEmpty)
        {
            yield return "openings:";
            foreach (var opening in revision.Openings) yield return $"  - {ElementText.Flow(ElementText.Opening(opening))}";
        }

        if (revision.IsGasket) yield return $"open-except: {ElementText.List(revision.OpenExcept)}";
        foreach (var (key, holes) in new[] { ("restrictions", revision.Restrictions), ("leaks", revision.Leaks) })
        {
            if (holes.IsEmpty) continue;
            yield return $"{key}:";
            foreach (var hole in holes) yield return $"  - {ElementText.Flow(ElementText.Hole(hole, part))}";
        }
    }

    /// <summary>The named elements of a revision, kind by kind.</summary>
    public static IEnumerable<(string Key, List<(string Name, Entry Value)> Elements)> Named(string part, RevisionSpec revision)
    {
        yield return ("passages", [.. revision.Passages.Select(item => (item.Name, Entry.Of(ElementText.Passage(item))))]);
        yield return ("balls", [.. revision.Balls.Select(item => (item.Name, Entry.Of(ElementText.Ball(item, part))))]);
        yield return ("valves", [.. revision.Valves.Select(item => (item.Name, Entry.Of(ElementText.Valve(item, part))))]);
        yield return ("regulators", [.. revision.Regulators.Select(item => (item.Name, Entry.Of(ElementText.Regulator(item, part))))]);
        yield return ("solenoids", [.. revision.Solenoids.Select(item => (item.Name, Entry.Of(ElementText.Solenoid(item, part))))]);
        yield return ("lever", [.. revision.Lever.Select(item => (item.Position, new Entry([], ElementText.Ports(item.Ports, part))))]);
    }

    /// <summary>An element's keys and values; a lever position is one list and has none.</summary>
    internal sealed record Entry(ImmutableArray<(string Key, string Value)> Keys, string Text)
    {
        public static Entry Of(IEnumerable<(string, string)> keys)
        {
            var all = keys.ToImmutableArray();
            return new Entry(all, ElementText.Flow(all));
        }
    }
}
