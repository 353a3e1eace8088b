using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Studies.Identify;

/// <summary>What came of reading an observation.</summary>
/// <param name="Observation">The observation, or null when it was not understood.</param>
/// <param name="Problem">What is wrong with it, in a sentence, or null.</param>
/// <param name="Help">What to do, or null.</param>
public sealed record ObservationReading(Observation? Observation, string? Problem, string? Help);

/// <summary>Finds out which part an observation is about, and what it says of it.</summary>
public sealed class ObservationReader
{
    private const int LongestList = 12;

    private readonly ImmutableArray<PartTraits> parts;

    /// <summary>A reader of observations.</summary>
    /// <param name="parts">The parts that observations may be about.</param>
    public ObservationReader(ImmutableArray<PartTraits> parts) => this.parts = parts;

    /// <summary>Reads what was seen, or looked for and not seen.</summary>
    /// <param name="text">A phrase, with the part before it where that is not plain: <c>plate: slot at 22-23</c>.</param>
    /// <param name="seen">Whether it was seen.</param>
    public ObservationReading Look(string text, bool seen)
    {
        var kind = seen ? ObservationKind.Seen : ObservationKind.NotSeen;
        return Resolve(text, Phrased, match =>
            new Observation(kind, text, match.Row, match.Answer, match.IsDenied == seen));
    }

    /// <summary>Reads what was measured.</summary>
    /// <param name="text">A location or phrase and a size: <c>21=5.0 mm</c>, <c>plate@21=#45</c>, <c>ball in range=10 mm</c>.</param>
    public ObservationReading Measured(string text)
    {
        var at = text.LastIndexOf('=');
        if (at < 0) return new(null, $"measured '{text}' has no size", "Write what was measured, =, and the size: 21=5.0mm");
        var (size, problem) = SizeReader.Read(text[(at + 1)..]);
        if (size is not { } measured) return new(null, $"measured '{text}': {problem}", "A size is 2.1 mm, 0.083 in, 13/64 in, #45 (number drill) or, of a slot, 3 x 15 mm.");
        return Resolve(text[..at].Trim(), (part, phrase, alone) => SizedReader.Read(part, phrase, measured, alone), match =>
            new Observation(ObservationKind.Measured, text, match.Row, match.Answer, IsDenied: false));
    }

    /// <summary>A trait's phrase as it has to be typed: with its part before it where the words alone would not do.</summary>
    /// <param name="trait">A trait of one of the parts.</param>
    /// <param name="phrase">Its phrase, or a count with it.</param>
    public string Spelled(Trait trait, string phrase) =>
        Matches(phrase, Phrased).Found is [{ Match.Row.Trait: var alone }] && alone.Part == trait.Part && (alone.Key with { Sized = trait.Key.Sized }) == trait.Key
            ? phrase
            : $"{trait.Part}: {phrase}";

    private ObservationReading Resolve(string text, Func<PartTraits, string, bool, PhraseReading> read, Func<PhraseMatch, Observation> observe)
    {
        var (phrase, scope, found, problems) = Matches(text, read);
        return found.Count switch
        {
            1 => new(observe(found[0].Match), null, null),
            > 1 => new(null, $"'{text}' fits several parts", $"Say which: {string.Join("; or ", found.Select(pair => $"{pair.Part.Part.Name}: {phrase}"))}."),
            _ => Unknown(text, phrase, scope, problems),
        };
    }

    private static PhraseReading Phrased(PartTraits part, string phrase, bool alone) => new PhraseReader(part, alone).Read(phrase);

    /// <summary>The parts that a text may be about, and what it says of each; without any help, which looks for matches itself.</summary>
    private (string Phrase, ImmutableArray<PartTraits> Scope, List<(PartTraits Part, PhraseMatch Match)> Found, List<string> Problems) Matches(
        string text, Func<PartTraits, string, bool, PhraseReading> read)
    {
        var (named, phrase) = NamedPart(text);
        var scope = named is null ? parts : [named];
        var (found, problems) = (new List<(PartTraits Part, PhraseMatch Match)>(), new List<string>());
        foreach (var part in scope)
        {
            var reading = read(part, phrase, scope.Length == 1);
            if (reading.Match is { } match) found.Add((part, match));
            if (reading.Problem is { } problem) problems.Add(problem);
        }

        if (found.Exists(pair => pair.Match.IsKnown)) found.RemoveAll(pair => !pair.Match.IsKnown);
        return (phrase, scope, found, problems);
    }

    private ObservationReading Unknown(string text, string phrase, ImmutableArray<PartTraits> scope, List<string> problems)
    {
        if (problems.Count > 0) return new(null, $"'{text}': {string.Join("; ", problems.Distinct())}", Known(scope));
        var phrases = Phrases(scope).ToList();
        var close = DidYouMean.Find(PhraseWords.Collapse(phrase), phrases);
        return new(null, $"nothing known is called '{text}'", close is null ? Known(scope) : $"Did you mean: {close}? {Known(scope)}");
    }

    private string Known(ImmutableArray<PartTraits> scope)
    {
        var phrases = Phrases(scope).ToList();
        if (phrases.Count == 0) return "There is nothing to tell revisions apart by here.";
        return $"Known: {string.Join("; ", phrases.Take(LongestList))}{(phrases.Count > LongestList ? "; and more, listed by identify without observations" : "")}.";
    }

    private IEnumerable<string> Phrases(ImmutableArray<PartTraits> scope) =>
        from part in scope
        from row in part.Rows
        where row.IsListed && !row.Trait.Key.Sized && row.Answers.Distinct().Count() > 1
        from phrase in row.Answers.OfType<Answer.Number>().Select(number => BenchText.Of(number.Value, row.Trait)).Distinct().DefaultIfEmpty(row.Trait.Phrase)
        select Spelled(row.Trait, phrase);

    /// <summary><c>plate: slot at 6-7</c>, <c>plate@6-7</c> or <c>plate slot at 6-7</c> name their part.</summary>
    private (PartTraits? Part, string Phrase) NamedPart(string text)
    {
        var trimmed = text.Trim();
        foreach (var part in parts)
        {
            var name = part.Part.Name;
            if (trimmed.Length <= name.Length + 1 || !trimmed.StartsWith(name, StringComparison.Ordinal)) continue;
            var rest = trimmed[(name.Length + 1)..].Trim();
            switch (trimmed[name.Length])
            {
                case ':':
                    return (part, rest);
                case '@':
                    return (part, char.IsAsciiLetter(rest.FirstOrDefault()) && rest.Contains(' ') ? rest : $"opening at {rest}");
                case ' ' when new PhraseReader(part, alone: true).Read(rest).Match is not null:
                    return (part, rest);
            }
        }

        return (null, trimmed);
    }
}
