using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>
/// Lays each revision over the one it is based on, node by node, so that every value keeps the place of the line that
/// wrote it.
/// </summary>
/// <param name="revisions">The revisions of one part, as written.</param>
/// <param name="part">What messages call the part.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class RevisionMerge(YamlMapping revisions, string part, FindingList findings)
{
    private readonly Dictionary<string, RevisionSource> done = new(StringComparer.Ordinal);
    private readonly HashSet<string> open = new(StringComparer.Ordinal);
    private readonly MergeBudget budget = new(part, findings);
    private readonly string partName = part["part ".Length..];

    /// <summary>Every revision, in the order of the file.</summary>
    public ImmutableArray<RevisionSource> All()
    {
        if (revisions.Entries.Length > YamlLimits.Revisions)
        {
            findings.Add(FileRules.FileTooBig.At(revisions.Place, $"{part} has more than {YamlLimits.Revisions} revisions", "Is this a circuit file?"));
            throw new ReadingStopped();
        }

        return [.. revisions.Entries.Select(Merged)];
    }

    private RevisionSource Merged(YamlEntry entry)
    {
        var (key, value) = entry;
        if (done.TryGetValue(key.Text, out var known)) return known;
        open.Add(key.Text);
        var label = $"{part}, revision {key.Text}";
        var own = Nodes.Mapping(value, new What(label), findings) ?? new YamlMapping([], value.Place);
        var basedOn = BasedOn(own, label);
        if (own.IndexOf("based-on") is >= 0 and var index) own = new YamlMapping(own.Entries.RemoveAt(index), own.Place);
        var content = own;
        if (basedOn is not null)
        {
            var below = Merged(revisions.Entries[revisions.IndexOf(basedOn)]).Content;
            content = new NodeMerge(budget, findings).Revision(below, own, partName);
        }

        open.Remove(key.Text);
        return done[key.Text] = new RevisionSource(key.Text, key.Place, basedOn, content);
    }

    private string? BasedOn(YamlMapping own, string label)
    {
        if (own.Find("based-on") is not { } node) return null;
        if (Nodes.Text(node, new What(label, "based-on"), "a revision", findings) is not { } name) return null;
        if (revisions.IndexOf(name.Text) < 0)
        {
            var names = revisions.Entries.Select(entry => entry.Key.Text).Where(other => !open.Contains(other)).ToList();
            findings.Add(NameRules.UnknownName.At(
                name.Place, $"{part} has no revision {Quote.Text(name.Text)}", Quote.Meant(DidYouMean.Find(name.Text, names), "revision", names)));
            return null;
        }

        if (open.Count > YamlLimits.BasedOn)
        {
            findings.Add(FileRules.TooDeep.At(
                name.Place, $"{label} ends a chain of more than {YamlLimits.BasedOn} revisions based on one another", "Write one of them out in full, without based-on."));
            return null;
        }

        if (!open.Contains(name.Text)) return name.Text;
        var said = label.EndsWith($" {name.Text}", StringComparison.Ordinal) ? "is based on itself" : $"is based on {name.Text}, which is based on it in turn";
        findings.Add(PartRules.BasedOnCircle.At(name.Place, $"{label} {said}", "Write one revision out in full, without based-on."));
        return null;
    }
}
