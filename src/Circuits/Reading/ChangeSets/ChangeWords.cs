using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Reading;

/// <summary>What words of the command line, or a file, ask for.</summary>
/// <param name="Set">The changes; null when any finding is an error.</param>
/// <param name="Findings">What is wrong, by place.</param>
public sealed record ChangeSetResult(ChangeSet? Set, ImmutableArray<Finding> Findings);

/// <summary>Reads changes that are written as options: <c>--hole 21=2.0mm</c>. Findings name the option as their place.</summary>
public static class ChangeWords
{
    /// <summary>The kinds of change; the option of each has its name.</summary>
    public static ImmutableArray<string> Kinds { get; } = [.. ChangeEntry.Kinds];

    /// <summary>Reads the options' values.</summary>
    /// <param name="words">The kind, the option as it was written, <c>--hole</c>, and its value.</param>
    public static ChangeSetResult Read(IEnumerable<(string Kind, string Option, string Word)> words)
    {
        var findings = new FindingList();
        var changes = ImmutableArray.CreateBuilder<ChangeRequest>();
        foreach (var (kind, option, word) in words)
        {
            if (Read(kind, option, word, findings) is { } change) changes.Add(change);
        }

        return new ChangeSetResult(findings.HasErrors ? null : new ChangeSet(changes.ToImmutable()), findings.InOrder());
    }

    private static ChangeRequest? Read(string kind, string option, string word, FindingList findings)
    {
        var place = new Place($"{option} {word}", 0, 0);
        var at = word.LastIndexOf('=');
        var bare = ChangeEntry.IsBare(kind);
        if (at < 0 && (bare || kind == "fit")) return ChangeEntry.Bare(kind, word, place);
        if (at > 0 && at < word.Length - 1 && !bare)
            return ChangeEntry.Valued(kind, word[..at].Trim(), word[(at + 1)..].Trim(), place, place, findings);
        findings.Add(ChangeSetRules.IncompleteChange.At(
            place, $"{option} takes {(bare ? Phrase.Of($"a name alone") : Phrase.Of($"a name and a value"))}, found {Quote.Text(word)}",
            $"Write {option} {ChangeEntry.Example(kind)}."));
        return null;
    }
}
