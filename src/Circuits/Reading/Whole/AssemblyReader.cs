using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads choices of revisions: matched sets, and what the author expects of assemblies.</summary>
internal sealed class AssemblyReader(NameIndex names, FindingList findings)
{
    private static readonly KeyValuePair<string, Verdict>[] Verdicts =
    [
        new("as-charted", Verdict.AsCharted),
        new("not-decided", Verdict.NotDecided),
        new("weak", Verdict.Weak),
        new("over-pressure", Verdict.OverPressure),
        new("starved", Verdict.Starved),
        new("unwanted", Verdict.Unwanted),
        new("lost", Verdict.Lost),
        new("did-not-converge", Verdict.DidNotConverge),
        new("never-settles", Verdict.NeverSettles),
    ];

    /// <summary>The matched sets, each with a revision of every part.</summary>
    public ImmutableArray<MatchedSet> Matched(ImmutableArray<YamlEntry> entries)
    {
        var sets = ImmutableArray.CreateBuilder<MatchedSet>(entries.Length);
        foreach (var (key, value) in entries)
        {
            if (sets.Count >= YamlLimits.Parts)
            {
                findings.Add(FileRules.FileTooBig.At(key.Place, $"More than {YamlLimits.Parts} matched sets", "Is this a circuit file?"));
                throw new ReadingStopped();
            }

            NameCheck.Other(key, "matched set", findings);
            var label = new What($"matched set {key.Text}");
            if (Nodes.Mapping(value, label, findings) is not { } mapping) continue;
            var given = Choice(mapping, label);
            var whole = ImmutableArray.CreateBuilder<KeyValuePair<string, string>>();
            foreach (var part in names.Parts)
            {
                if (given.TryGetValue(part.Name, out var revision)) whole.Add(new(part.Name, revision));
                else if (part.Revisions is [var only]) whole.Add(new(part.Name, only.Name));
                else if (mapping.Find(part.Name) is null && !part.Revisions.IsEmpty) ReportLeftOut(key, part);
            }

            sets.Add(new MatchedSet(key.Text, whole.ToImmutable(), key.Place));
        }

        return sets.ToImmutable();
    }

    /// <summary>What the author expects.</summary>
    public ImmutableArray<Expectation> Expectations(ImmutableArray<YamlNode> items)
    {
        var expectations = ImmutableArray.CreateBuilder<Expectation>(items.Length);
        foreach (var item in items)
        {
            if (Fields.Open(item, "expect", item.Place, findings) is not { } fields) continue;
            if (Expectation(item, fields) is { } expectation) expectations.Add(expectation);
            fields.Close();
        }

        return expectations.ToImmutable();
    }

    private Expectation? Expectation(YamlNode item, Fields fields)
    {
        var node = fields.Need("assembly", "{part: revision}, or a matched set's name");
        string? set = null;
        ImmutableArray<KeyValuePair<string, string>> choice = [];
        if (node is YamlScalar name)
            set = NameLookup.Known(name, names.Matched, "matched set", fields.What("assembly"), findings) ? name.Text : null;
        else if (node is not null && Nodes.Mapping(node, fields.What("assembly"), findings) is { } mapping)
            choice = [.. Choice(mapping, fields.What("assembly"))];
        var gear = fields.Find("gear") is { } state ? NameLookup.Find(state, names.Gears, "gear", fields.What("gear"), findings) : null;
        var verdict = fields.Word(fields.Need("verdict", "as-charted, weak, starved, unwanted, lost or another verdict"), "verdict", Verdicts);
        var because = fields.Text("because")?.Text;
        var finds = NameLookup.List(fields.List("finds"), fields.What("finds"), findings, rule =>
            NameLookup.Find(rule, names.Rules.Value, "rule", fields.What("finds"), findings));
        return verdict is { } expected ? new Expectation(choice, gear, expected, because, item.Place) { Matched = set, Finds = finds } : null;
    }

    /// <summary>Part to revision, as a mapping writes it; those that are known.</summary>
    private OrderedDictionary<string, string> Choice(YamlMapping mapping, What what)
    {
        var choice = new OrderedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (key, value) in mapping.Entries)
        {
            if (!NameLookup.Known(key, names.PartSet, "part", what, findings) || names.FindPart(key.Text) is not { } part) continue;
            if (part.Revisions.IsEmpty || Nodes.Text(value, new What(what.ToString(), key.Text), "a revision", findings) is not { } name) continue;
            var revisions = new NameSet([.. part.Revisions.Select(revision => revision.Name)], complete: true);
            if (NameLookup.Known(name, revisions, $"revision of {part.Name} called", what, findings)) choice[part.Name] = name.Text;
        }

        return choice;
    }

    private void ReportLeftOut(YamlScalar set, PartNames part)
    {
        var revisions = Quote.Any(part.Revisions.Select(revision => revision.Name));
        findings.Add(GearRules.IncompleteMatchedSet.At(
            set.Place, $"matched set {set.Text} leaves out {part.Name}, which has revisions {revisions}", $"Add {part.Name}: {revisions}."));
    }
}
