using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>
/// Lays one mapping over another: keys are merged deeply, null removes, lists are replaced whole, but for those
/// whose entries lie somewhere (<see cref="Section.MarksOf"/>): each takes the place of inherited ones that lie there.
/// </summary>
/// <param name="budget">Bounds what the revisions of a part come to.</param>
/// <param name="findings">Takes removals of what is not there.</param>
internal sealed class NodeMerge(MergeBudget budget, FindingList findings)
{
    /// <summary>A revision's elements laid over those it inherits.</summary>
    /// <param name="below">What it inherits.</param>
    /// <param name="above">What it says itself.</param>
    /// <param name="part">The part's name.</param>
    public YamlMapping Revision(YamlMapping below, YamlMapping above, string part) =>
        Mapping(below, above, new What($"part {part}"), (key, lower, upper) =>
            Sections.Find(key) is { MarksOf: { } marksOf } section ? Items(lower, upper, item => marksOf(item, part), $"part {part}: {section.NotInherited}") : null);

    private YamlMapping Mapping(
        YamlMapping below, YamlMapping above, What what,
        Func<string, YamlSequence, YamlSequence, YamlSequence?>? listRule = null)
    {
        budget.Spend(below.Entries.Length + above.Entries.Length, above);
        var removed = new HashSet<int>();
        var entries = below.Entries.ToBuilder();
        foreach (var entry in above.Entries)
        {
            var index = below.IndexOf(entry.Key.Text);
            if (entry.Value is YamlScalar { IsNull: true })
            {
                if (index >= 0) removed.Add(index);
                else ReportNothing(entry, below, what);
            }
            else if (index < 0)
                entries.Add(entry);
            else
                entries[index] = new YamlEntry(entry.Key, Value(below.Entries[index].Value, entry, what, listRule));
        }

        var kept = ImmutableArray.CreateBuilder<YamlEntry>(entries.Count);
        for (var index = 0; index < entries.Count; index++)
        {
            if (!removed.Contains(index)) kept.Add(entries[index]);
        }

        return new YamlMapping(kept.DrainToImmutable(), above.Place);
    }

    private YamlNode Value(
        YamlNode below, YamlEntry above, What what,
        Func<string, YamlSequence, YamlSequence, YamlSequence?>? listRule) => (below, above.Value) switch
        {
            (YamlMapping lower, YamlMapping upper) => Mapping(lower, upper, new What($"{what}, {above.Key.Text}")),
            (YamlSequence lower, YamlSequence upper) => listRule?.Invoke(above.Key.Text, lower, upper) ?? upper,
            _ => above.Value,
        };

    private YamlSequence Items(
        YamlSequence below, YamlSequence above, Func<YamlNode, ImmutableArray<string>> marksOf, string none)
    {
        budget.Spend(below.Items.Length + above.Items.Length, above);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var inherited = new HashSet<string>(StringComparer.Ordinal);
        foreach (var mark in below.Items.SelectMany(item => marksOf(item))) inherited.Add(mark);
        var added = new List<YamlNode>();
        foreach (var item in above.Items)
        {
            var marks = marksOf(item);
            foreach (var mark in marks) taken.Add(mark);
            if (!Removes(item))
                added.Add(item);
            else if (!marks.Any(inherited.Contains))
            {
                findings.Add(PartRules.NothingToRemove.At(
                    item.Place, $"{none} {string.Join(", ", marks)} is inherited that could be removed", "Correct it, or delete the entry."));
            }
        }

        var kept = below.Items.Where(item => !marksOf(item).Any(taken.Contains));
        return new YamlSequence([.. kept, .. added], above.Place);
    }

    /// <summary>Whether a list entry only removes: its hole is null, and it has no other size.</summary>
    public static bool Removes(YamlNode item) =>
        item is YamlMapping mapping && mapping.Find("hole") is YamlScalar { IsNull: true }
        && mapping.Find("slot") is null && mapping.Find("area") is null;

    private void ReportNothing(YamlEntry entry, YamlMapping below, What what)
    {
        var close = DidYouMean.Find(entry.Key.Text, below.Entries.Select(inherited => inherited.Key.Text));
        findings.Add(PartRules.NothingToRemove.At(
            entry.Key.Place, $"{what}: no {Quote.Text(entry.Key.Text)} is inherited that could be removed", close is null ? "Correct the name, or delete the line." : $"Did you mean {close}?"));
    }
}
