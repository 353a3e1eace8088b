using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>One chosen revision of every part.</summary>
public sealed class Assembly
{
    private Assembly(Unit unit, ImmutableArray<Revision> revisions, string? matched, ImmutableArray<Phrase> changes)
    {
        Unit = unit;
        Revisions = revisions;
        Matched = matched;
        Changes = changes;
    }

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>The chosen revisions, in the order of the unit's parts.</summary>
    public ImmutableArray<Revision> Revisions { get; }

    /// <summary>The matched set that this assembly is, or null. One whose parts were changed is none.</summary>
    public string? Matched { get; }

    /// <summary>What was changed of its parts, in words; empty while they are as the file describes them.</summary>
    public ImmutableArray<Phrase> Changes { get; }

    /// <summary>Part and revision names, in the order of the unit's parts.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Choice =>
        [.. Unit.Parts.Select((part, index) => KeyValuePair.Create(part.Name, Revisions[index].Name))];

    /// <summary>The assembly with those revisions.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="revisions">One revision of each part, in the order of the unit's parts.</param>
    /// <exception cref="ArgumentException">The number of revisions is not the number of parts.</exception>
    public static Assembly Of(Unit unit, ImmutableArray<Revision> revisions)
    {
        if (revisions.Length != unit.Parts.Length)
            throw new ArgumentException("An assembly takes one revision of each part.", nameof(revisions));
        var matched = unit.Matched.FirstOrDefault(set => IsSet(unit, set, revisions))?.Name;
        return new Assembly(unit, revisions, matched, []);
    }

    /// <summary>The assembly that a matched set declares.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="set">The matched set; it names a revision of every part.</param>
    public static Assembly Of(Unit unit, MatchedSet set) =>
        Of(unit, [.. unit.Parts.Select(part => part.FindRevision(set.Revisions.First(pair => pair.Key == part.Name).Value)!)]);

    /// <summary>The assembly after work on its parts: its revisions are as the work left them, under the names that they had.</summary>
    /// <param name="revisions">One revision of each part, in the order of the unit's parts.</param>
    /// <param name="changes">What was done, in words; at least one.</param>
    /// <exception cref="ArgumentException">A part's revision is missing, or nothing was done.</exception>
    public Assembly Changed(ImmutableArray<Revision> revisions, ImmutableArray<Phrase> changes)
    {
        if (revisions.Length != Unit.Parts.Length)
            throw new ArgumentException("An assembly takes one revision of each part.", nameof(revisions));
        if (changes.IsEmpty) throw new ArgumentException("A changed assembly says what was changed.", nameof(changes));
        return new Assembly(Unit, revisions, null, [.. Changes, .. changes]);
    }

    /// <summary>The same parts, with the same work done on them, in a unit that differs in what belongs to no part.</summary>
    /// <param name="unit">The unit; its parts are those of this assembly's.</param>
    public Assembly In(Unit unit) => new(unit, Revisions, Matched, Changes);

    /// <summary>The same assembly with revisions rewritten by what is no work on them: a size that was missing, say.</summary>
    /// <param name="revisions">The revisions in their place.</param>
    public Assembly With(ImmutableArray<Revision> revisions) => new(Unit, revisions, Matched, Changes);

    /// <summary>The unit's first matched set, or the first revision of every part when it has none.</summary>
    /// <param name="unit">The unit.</param>
    public static Assembly DefaultOf(Unit unit) =>
        unit.Matched.Length > 0 ? Of(unit, unit.Matched[0]) : Of(unit, [.. unit.Parts.Select(part => part.Revisions[0])]);

    /// <summary>How many parts have the same revision in both, changed or not.</summary>
    /// <param name="other">Another assembly of the same unit.</param>
    public int SharedParts(Assembly other)
    {
        var shared = 0;
        for (var i = 0; i < Revisions.Length; i++)
        {
            if (Revisions[i].Name == other.Revisions[i].Name) shared++;
        }

        return shared;
    }

    /// <summary>Of several assemblies, those that share most parts with this one; several when they tie.</summary>
    /// <param name="others">What is chosen from.</param>
    /// <param name="assembly">The assembly of each.</param>
    public ImmutableArray<T> NearestOf<T>(ImmutableArray<T> others, Func<T, Assembly> assembly)
    {
        if (others.IsEmpty) return [];
        var most = 0;
        foreach (var other in others) most = Math.Max(most, SharedParts(assembly(other)));
        return [.. others.Where(other => SharedParts(assembly(other)) == most)];
    }

    private static bool IsSet(Unit unit, MatchedSet set, ImmutableArray<Revision> revisions)
    {
        for (var i = 0; i < revisions.Length; i++)
        {
            if (!set.Revisions.Any(pair => pair.Key == unit.Parts[i].Name && pair.Value == revisions[i].Name)) return false;
        }

        return true;
    }
}
