using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Checks names of things other than passages.</summary>
internal static class NameLookup
{
    /// <summary>Whether the name is one of those known; if not, there is a finding.</summary>
    public static bool Known(YamlScalar name, NameSet known, string kind, What what, FindingList findings)
    {
        if (known.Admits(name.Text)) return true;
        findings.Add(NameRules.UnknownName.At(
            name.Place, $"{what}: there is no {kind} {Quote.Text(name.Text)}", Quote.Meant(DidYouMean.Find(name.Text, known.All), kind, known.All)));
        return false;
    }

    /// <summary>The name behind a node when it is one of those known, or null with a finding.</summary>
    public static NameUse? Find(YamlNode node, NameSet known, string kind, What what, FindingList findings) =>
        Nodes.Text(node, what, $"a {kind}", findings) is { } name && Known(name, known, kind, what, findings)
            ? new NameUse(name.Text, name.Place)
            : null;

    /// <summary>The names behind a list, those that are known and stand there once.</summary>
    public static ImmutableArray<NameUse> List(
        ImmutableArray<YamlNode> nodes, What what, FindingList findings, Func<YamlNode, NameUse?> find)
    {
        var names = ImmutableArray.CreateBuilder<NameUse>(nodes.Length);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var node in nodes)
        {
            if (find(node) is not { } name) continue;
            if (!seen.Add(name.Name))
                findings.Add(NameRules.NamedTwice.At(name.Place, $"{what} names {name.Name} twice", "Delete one of them."));
            else
                names.Add(name);
        }

        return names.ToImmutable();
    }

    /// <summary>A solenoid, by its own name or as <c>part.name</c>, or null with a finding.</summary>
    public static NameUse? Solenoid(YamlNode node, NameIndex names, What what, FindingList findings)
    {
        if (Nodes.Text(node, what, "a solenoid", findings) is not { } name) return null;
        var owners = names.Solenoids(name.Text);
        if (owners.Count == 1) return new NameUse(name.Text, name.Place);
        if (owners.Count > 1)
        {
            findings.Add(NameRules.AmbiguousName.At(
                name.Place, $"{what}: several parts have a solenoid {name.Text}", $"Write {Quote.Any(owners.Select(owner => $"{owner.Part.Name}.{name.Text}"))}."));
            return null;
        }

        if (names.AnyBroken) return null;
        string[] known = [.. names.Parts.SelectMany(part => part.Solenoids)];
        string[] full = [.. names.Parts.SelectMany(part => part.Solenoids.Select(solenoid => $"{part.Name}.{solenoid}"))];
        var dot = name.Text.IndexOf('.', StringComparison.Ordinal);
        var close = dot < 0
            ? DidYouMean.Find(name.Text, known)
            : full.FirstOrDefault(other => other.EndsWith(name.Text[dot..], StringComparison.Ordinal)) ?? DidYouMean.Find(name.Text, full);
        findings.Add(NameRules.UnknownName.At(name.Place, $"{what}: no part has a solenoid {Quote.Text(name.Text)}", Quote.Meant(close, "solenoid", known)));
        return null;
    }
}
