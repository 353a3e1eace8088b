using System.Text.RegularExpressions;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Understands what is said about a part: the sheet's own phrases, and others that plainly mean the same.</summary>
/// <param name="part">The part.</param>
/// <param name="alone">Whether no other part can be meant; then looser words will do.</param>
/// <param name="marks">Whether a phrase may be a mark in the author's words.</param>
internal sealed partial class PhraseReader(PartTraits part, bool alone, bool marks = true)
{
    // Loose balls differ by half a millimetre or more; a caliper reads to a tenth.
    private const double SameBall = 0.1;

    /// <summary>What the phrase says without being a mark in the author's words; null when it is nothing else.</summary>
    public PhraseMatch? Derived(string phrase) => new PhraseReader(part, alone, marks: false).Read(phrase).Match;

    /// <summary>What the phrase says.</summary>
    public PhraseReading Read(string phrase)
    {
        var reading = AsWritten(phrase);
        if (reading.Match is not null) return reading;
        var bare = PhraseWords.WithoutBracket(phrase);
        return bare.Length == phrase.Length ? reading : AsWritten(bare) is { Match: not null } match ? match : reading;
    }

    private PhraseReading AsWritten(string phrase)
    {
        var collapsed = PhraseWords.Collapse(phrase);
        if (Known(row => string.Equals(row.Trait.Phrase, collapsed, StringComparison.OrdinalIgnoreCase)) is { } exact) return exact;
        var words = PhraseWords.Normal(phrase);
        if (words.Length == 0) return PhraseReading.Nothing;
        if (Known(row => PhraseWords.Normal(row.Trait.Phrase) == words) is { } same) return same;
        if (Counted(words) is { } count) return count;
        if (Denial().Match(words) is { Success: true } denial)
        {
            var rest = AsWritten(words[denial.Length..]);
            return rest.Match is { } denied ? denied.Denied : rest;
        }

        return part.Part.Kind == PartKind.Sheet ? OfSheet(words) : OfCasting(words) is { Match: not null } casting ? casting : OfBall(words, OfCasting(words));
    }

    private PhraseMatch? Known(Predicate<TraitRow> wanted)
    {
        var row = part.Rows.FirstOrDefault(row => !row.Trait.Key.Sized && (marks || row.Trait.Key.Kind != TraitKind.Mark) && row.Answers.All(answer => answer is not Answer.Number) && wanted(row));
        return row is null ? null : new PhraseMatch(row, Answer.Yes, IsDenied: false);
    }

    /// <summary><c>5 balls of 9 mm</c>, <c>two holes at 7</c>.</summary>
    private PhraseReading? Counted(string words)
    {
        if (PhraseWords.Count(words) is not var (number, rest)) return null;
        var row = part.Rows.FirstOrDefault(row => row.Answers.Any(answer => answer is Answer.Number)
            && (PhraseWords.Normal(row.Trait.Phrase) == rest || (number == 1 && PhraseWords.Normal(BenchText.Of(1, row.Trait))[2..] == rest)));
        if (row is not null) return new PhraseMatch(row, new Answer.Number(number), IsDenied: false);
        if (part.Part.Kind != PartKind.BallSet || BallsOf().Match(rest) is not { Success: true } balls) return null;
        var (size, problem) = SizeReader.Read(balls.Groups[1].Value);
        if (size is not { } measured) return PhraseReading.Fault(problem!);
        var known = part.Rows.FirstOrDefault(row => row.Trait.Size is { } its && its.IsWithin(measured, SameBall));
        return new PhraseMatch(known ?? ElementTraits.OtherBalls(part.Part, measured), new Answer.Number(number), IsDenied: false);
    }

    private PhraseReading OfSheet(string words)
    {
        if (SheetOpening().Match(words) is not { Success: true } match) return PhraseReading.Nothing;
        var metal = match.Groups["metal"].Success;
        if (match.Groups["metal"].Value.StartsWith("solid", StringComparison.Ordinal) && !alone) return PhraseReading.Nothing;
        var (spots, problem) = LocationWords.Read(part, match.Groups["at"].Value);
        if (spots is null) return new PhraseReading(null, problem);
        if (metal && spots.Count > 1) return PhraseReading.Fault("name one location of metal at a time");
        var kind = metal ? TraitKind.Opening : match.Groups["noun"].Value switch
        {
            "hole" or "orifice" => TraitKind.Hole,
            "slot" => TraitKind.Slot,
            "cup" or "orifice cup" => TraitKind.Cup,
            "window" => TraitKind.Window,
            _ => TraitKind.Opening,
        };
        // A gasket that is open by itself has no holes that anybody would speak of.
        if (!alone && kind is (TraitKind.Hole or TraitKind.Slot or TraitKind.Cup) && part.Part.Revisions.All(revision => revision.Openings.IsEmpty)) return PhraseReading.Nothing;
        List<string> at = [.. spots.Select(spot => spot.Id)];
        var row = part.Row(SheetTraits.Opening(part.Part.Name, kind, at));
        // A slot may be named by one of its ends, if only one slot reaches there.
        var longer = part.Rows.Where(other => other.Trait.Key == row.Trait.Key || (other.Trait.Key is { Sized: false } key && key.Kind == kind && key.Subject.Split('\n') is var all && at.TrueForAll(all.Contains))).ToList();
        if (longer.Exists(other => other.Trait.Key == row.Trait.Key) || longer.Count == 0) return new PhraseMatch(row, Answer.Yes, metal);
        return longer.Count == 1 ? new PhraseMatch(longer[0], Answer.Yes, IsDenied: false)
            : PhraseReading.Fault($"which one: {string.Join(", or ", longer.Select(other => other.Trait.Phrase))}");
    }

    private PhraseReading OfCasting(string words)
    {
        var casting = part.Casting;
        if (!casting.Any) return PhraseReading.Nothing;
        if (Wall().Match(words) is { Success: true } wall) return Pair(wall, casting.RibRow);
        if (Joining().Match(words) is { Success: true } joining) return Pair(joining, casting.TrackRow);
        if (Cavity().Match(words) is not { Success: true } match) return PhraseReading.Nothing;
        if (match.Groups["loose"].Success && !alone) return PhraseReading.Nothing;
        var (spots, problem) = LocationWords.Read(part, match.Groups["at"].Value);
        return spots is null ? new PhraseReading(null, problem)
            : spots.Count > 1 ? PhraseReading.Fault($"name one location at a time, or say: track from {spots[0].Id} to {spots[1].Id}")
            : new PhraseMatch(casting.OpenRow(spots[0]), Answer.Yes, match.Groups["metal"].Success);
    }

    private PhraseReading Pair(Match match, Func<Spot, Spot, TraitRow> row)
    {
        var (a, fault) = LocationWords.One(part, match.Groups["a"].Value);
        if (a is not { } one) return PhraseReading.Fault(fault!);
        var (b, problem) = LocationWords.One(part, match.Groups["b"].Value);
        return b is not { } two ? PhraseReading.Fault(problem!)
            : one == two ? PhraseReading.Fault("it takes two locations")
            : new PhraseMatch(row(one, two), Answer.Yes, IsDenied: false);
    }

    private PhraseReading OfBall(string words, PhraseReading otherwise)
    {
        if (BallIn().Match(words) is not { Success: true } match) return otherwise;
        var name = match.Groups["name"].Value;
        var rows = part.Rows.Where(row => row.Trait.Key is { Kind: TraitKind.Ball, Sized: false }
            && (Names(row.Trait.Key.Subject, name) || BallsIn(row).Any(ball => Names(ball.Name, name)))).ToList();
        return rows.Count == 1 ? new PhraseMatch(rows[0], Answer.Yes, IsDenied: false)
            : rows.Count > 1 ? PhraseReading.Fault($"which one: {string.Join(", or ", rows.Select(row => row.Trait.Phrase))}")
            : otherwise;
    }

    private IEnumerable<Ball> BallsIn(TraitRow row) => part.Part.Revisions.SelectMany(revision => revision.Balls)
        .Where(ball => ElementTraits.Local(part.Part.Name, ball.Pocket.Name) == row.Trait.Key.Subject);

    // `range` stands for `channel.range`.
    private static bool Names(string full, string name) =>
        string.Equals(full, name, StringComparison.OrdinalIgnoreCase) || full.EndsWith("." + name, StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"^(?:no|not|without|lacks) (?:an? |the )?", RegexOptions.CultureInvariant)]
    private static partial Regex Denial();

    [GeneratedRegex(@"^balls? of (.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex BallsOf();

    [GeneratedRegex(
        @"^(?:(?<noun>hole|orifice|slot|orifice cup|cup|window|opening|cut-?out)|(?<metal>(?:plain |solid )?(?:metal|paper)|blank|solid))s? (?:at|over|in|from|spanning|between) (?<at>.+)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex SheetOpening();

    [GeneratedRegex(
        @"^(?:(?:passage|track|pocket|cavity|port)|(?<loose>hole|opening)|(?<metal>(?:solid )?metal|solid|(?<loose>plain metal|blank)))s? (?:at|over|in|on) (?<at>.+)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Cavity();

    [GeneratedRegex(@"^(?:rib|wall|web|land)s? (?:between|from|at|parting|divides|parts) (?<a>.+?)(?: and | to |-)(?<b>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Wall();

    [GeneratedRegex(@"^(?:track|passage|cavity|pocket) (?:from|between|joins|joining) (?<a>.+?)(?: and | to |-)(?<b>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Joining();

    [GeneratedRegex(@"^(?:check |two-way |shuttle )?ball (?:in |at |of )?(?<name>\S+)$", RegexOptions.CultureInvariant)]
    private static partial Regex BallIn();
}
