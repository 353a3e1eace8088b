using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Something of an assembly that a change can name: its own name within its part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Name">Its own name.</param>
/// <param name="Item">The thing.</param>
internal sealed record Named<T>(string Part, string Name, T Item)
{
    public string FullName => $"{Part}.{Name}";
}

/// <summary>Looks up the names of balls, valves, regulators, solenoids and passages, full or bare.</summary>
/// <param name="assembly">The assembly.</param>
/// <param name="faults">Takes what is wrong.</param>
internal sealed class TargetNames(Assembly assembly, List<Finding> faults)
{
    /// <summary>Everything of one kind that the assembly has.</summary>
    /// <param name="of">The things of a revision, with their names.</param>
    public ImmutableArray<Named<T>> All<T>(Func<Revision, IEnumerable<(string Name, T Item)>> of) =>
        [.. assembly.Unit.Parts.Zip(assembly.Revisions).SelectMany(pair => of(pair.Second).Select(item => new Named<T>(pair.First.Name, item.Name, item.Item)))];

    /// <summary>The thing of that name; null with a finding when there is none, or several.</summary>
    /// <param name="what">What it is, <c>ball</c>.</param>
    /// <param name="name">Its name, as <c>part.name</c> or bare.</param>
    /// <param name="place">Where it is named.</param>
    /// <param name="of">The things of a revision, with their names.</param>
    public Named<T>? Find<T>(string what, string name, Place place, Func<Revision, IEnumerable<(string Name, T Item)>> of)
    {
        var all = All(of);
        var full = all.Where(item => item.FullName == name).ToList();
        var found = full.Count > 0 ? full : [.. all.Where(item => item.Name == name)];
        if (found.Count == 1) return found[0];
        if (found.Count > 1)
        {
            faults.Add(ChangeRules.AmbiguousTarget.At(
                place, $"several parts have a {what} '{name}'", $"Name one: {string.Join(", ", found.Select(item => item.FullName))}."));
            return null;
        }

        faults.Add(Unknown(what, name, place, [.. all.Select(item => item.FullName)], [.. all.Select(item => item.Name)], Elsewhere(name, of)));
        return null;
    }

    /// <summary>The finding for a name that these parts do not have.</summary>
    /// <param name="what">What it should be.</param>
    /// <param name="name">The name.</param>
    /// <param name="place">Where it is named.</param>
    /// <param name="known">The full names that there are.</param>
    /// <param name="bare">The names without their parts, which may be meant too.</param>
    /// <param name="elsewhere">The revision that has it, or null.</param>
    public static Finding Unknown(
        string what, string name, Place place, ImmutableArray<string> known, ImmutableArray<string> bare, string? elsewhere = null)
    {
        var help = elsewhere is not null ? $"{elsewhere} has it; this assembly has another revision."
            : DidYouMean.Find(name, known.Concat(bare)) is { } close ? $"Did you mean {close}?"
            : known.IsEmpty ? $"These parts have no {what}."
            : $"Known: {string.Join(", ", known.Take(24))}{(known.Length > 24 ? ", ..." : "")}.";
        return ChangeRules.UnknownTarget.At(place, $"no {what} '{name}' in these parts", help);
    }

    /// <summary>The finding for a word that is none of a few.</summary>
    public static Finding UnknownWord(string what, string word, Place place, ImmutableArray<string> known) => ChangeRules.UnknownTarget.At(
        place, $"'{word}' is no {what}", DidYouMean.Find(word, known) is { } close ? $"Did you mean {close}?" : $"Known: {string.Join(", ", known)}.");

    private string? Elsewhere<T>(string name, Func<Revision, IEnumerable<(string Name, T Item)>> of)
    {
        foreach (var part in assembly.Unit.Parts)
        {
            foreach (var revision in part.Revisions)
            {
                if (of(revision).Any(item => item.Name == name || $"{part.Name}.{item.Name}" == name)) return $"{part.Name} {revision.Name}";
            }
        }

        return null;
    }
}
