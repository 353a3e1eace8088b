using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads change sets: a job that can be kept and repeated. Never throws for what a file holds; every fault is a finding.</summary>
public static class ChangeSetReader
{
    /// <summary>Reads a change set's file.</summary>
    /// <param name="path">The file's path; findings name the file as it is given here.</param>
    public static ChangeSetResult ReadFile(string path)
    {
        var findings = new FindingList();
        return TextFile.Read(path, path, findings) is { } text ? Read(text, path, findings) : new ChangeSetResult(null, findings.InOrder());
    }

    /// <summary>Reads a change set's text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">The file's name in findings.</param>
    public static ChangeSetResult ReadText(string text, string name) => Read(text, name, new FindingList());

    private static ChangeSetResult Read(string text, string name, FindingList findings)
    {
        ChangeSet? set = null;
        try
        {
            if (YamlTree.Read(text, name, findings) is { } root) set = Read(root, findings);
        }
        catch (ReadingStopped)
        {
            // What was found so far says why.
        }

        return new ChangeSetResult(findings.HasErrors ? null : set, findings.InOrder());
    }

    private static ChangeSet? Read(YamlMapping root, FindingList findings)
    {
        var fields = new Fields(root, "", root.Place, findings);
        if (fields.Need("changes", "1") is not { } version) return null;
        if (version is not YamlScalar { Text: "1" })
        {
            findings.Add(FileRules.UnsupportedFormat.At(
                version.Place, $"This file has changes {version.Describe()}; this program reads version 1 of change sets", "Write changes: 1, if the file keeps to it."));
            return null;
        }

        var job = fields.Text("job")?.Text;
        ImmutableArray<ChangeRequest> from = [.. Entries(fields, "from", "fit", findings)];
        ImmutableArray<ChangeRequest> changes = [.. ChangeEntry.Kinds.SelectMany(kind => Entries(fields, kind, kind, findings)).OrderBy(change => change.Place)];
        fields.Close();
        return new ChangeSet(changes) { Job = job, From = from };
    }

    private static IEnumerable<ChangeRequest> Entries(Fields fields, string key, string kind, FindingList findings)
    {
        if (fields.Find(key) is not { } node) yield break;
        if (ChangeEntry.IsBare(kind) || (kind == "fit" && node is YamlScalar))
        {
            foreach (var item in Nodes.ListOrOne(node))
            {
                if (Nodes.Text(item, fields.What(key), "a name", findings) is { } name) yield return ChangeEntry.Bare(kind, name.Text, name.Place);
            }

            yield break;
        }

        if (Nodes.Mapping(node, fields.What(key), findings) is not { } mapping) yield break;
        foreach (var (target, value) in mapping.Entries)
        {
            if (Nodes.Text(value, new What(key, target.Text), "a value", findings) is not { } text) continue;
            if (ChangeEntry.Valued(kind, target.Text, text.Text, target.Place, text.Place, findings) is { } change) yield return change;
        }
    }
}
