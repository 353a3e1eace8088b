using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads change sets: a job that can be kept and repeated. Never throws for what a file holds; every fault is a finding.</summary>
public static class ChangeSetReader
{
    /// <summary>Reads a change set's file.</summary>
    /// <param name="path">The file's path; findings name the file as it is given here.</param>
    /// <param name="files">Remembers what is read, for those who write afterwards.</param>
    public static ChangeSetResult ReadFile(string path, InputFiles? files = null)
    {
        var findings = new FindingList();
        return TextFile.Read(path, path, files ?? new InputFiles(), findings) is { } text ? Read(text, path, findings) : new ChangeSetResult(null, findings.InOrder());
    }

    /// <summary>Reads a file of many change sets, each with a name: <c>each: {wider feed: {hole: {plate@13: 3.4 mm}}}</c>.</summary>
    /// <param name="path">The file's path; findings name the file as it is given here.</param>
    /// <param name="files">Remembers what is read, for those who write afterwards.</param>
    /// <returns>The sets by name, in the order of the file; default where anything is wrong.</returns>
    public static (ImmutableArray<KeyValuePair<string, ChangeSet>> Sets, ImmutableArray<Finding> Findings) ReadEach(string path, InputFiles? files = null)
    {
        var findings = new FindingList();
        var sets = ImmutableArray.CreateBuilder<KeyValuePair<string, ChangeSet>>();
        try
        {
            if (TextFile.Read(path, path, files ?? new InputFiles(), findings) is { } text && YamlTree.Read(text, path, findings) is { } root)
            {
                var fields = new Fields(root, "", root.Place, findings);
                if (IsOfVersion(fields, findings) && fields.Need("each", "change sets by name") is { } node && Nodes.Mapping(node, fields.What("each"), findings) is { } mapping)
                {
                    foreach (var (name, value) in mapping.Entries)
                    {
                        if (Fields.Open(value, $"job {name.Text}", name.Place, findings) is { } one) sets.Add(KeyValuePair.Create(name.Text, Read(one, findings)));
                    }
                }

                fields.Close();
            }
        }
        catch (ReadingStopped)
        {
            // What was found so far says why.
        }

        return (findings.HasErrors ? default : sets.ToImmutable(), findings.InOrder());
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
        if (!IsOfVersion(fields, findings)) return null;
        if (fields.Find("each") is { } many)
        {
            findings.Add(ShapeRules.WrongType.At(many.Place, $"this file holds many change sets, where one is expected", "Ask for a row each: circuits what-if unit.yaml --each FILE."));
            return null;
        }

        return Read(fields, findings);
    }

    /// <summary>The keys of a change set but for its version.</summary>
    private static ChangeSet Read(Fields fields, FindingList findings)
    {
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

    private static bool IsOfVersion(Fields fields, FindingList findings)
    {
        if (fields.Need("changes", "1") is not { } version) return false;
        if (version is YamlScalar { Text: "1" }) return true;
        findings.Add(FileRules.UnsupportedFormat.At(
            version.Place, $"This file has changes {version.Describe()}; this program reads version 1 of change sets", "Write changes: 1, if the file keeps to it."));
        return false;
    }
}
