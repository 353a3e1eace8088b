using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Studies.Identify;

/// <summary>How an observation was made.</summary>
public enum ObservationKind
{
    /// <summary>Seen.</summary>
    Seen,

    /// <summary>Looked for and not seen.</summary>
    NotSeen,

    /// <summary>Measured.</summary>
    Measured,
}

/// <summary>Something found out about the part on the bench.</summary>
/// <param name="Kind">How it was found out.</param>
/// <param name="Text">In the words in which it was told.</param>
/// <param name="Row">The trait that it is about, and what that is on each revision.</param>
/// <param name="Answer">What the trait is, or is not, on the part.</param>
/// <param name="IsDenied">Whether the answer is what the part does not have.</param>
public sealed record Observation(ObservationKind Kind, string Text, TraitRow Row, Answer Answer, bool IsDenied)
{
    /// <summary>The part that it was made on.</summary>
    public string Part => Row.Trait.Part;

    /// <summary>What was understood: <c>slot at 22-23</c>, <c>no rib between 5 and 6</c>, <c>hole at 21: 5 mm</c>.</summary>
    public Phrase Meaning => Answer switch
    {
        Answer.Sizes { All: [{ Length: { } length } size, ..] } => Phrase.Of($"{Row.Trait.Phrase}: {new Length(size.Width):bare} x {new Length(length)}"),
        Answer.Sizes { All: [var size, ..] } => Phrase.Of($"{Row.Trait.Phrase}: {new Length(size.Width)}"),
        Answer.Number { Value: var count } when Row.Trait.Size is { } size =>
            Phrase.Of($"{Not}{count} {(count == 1 ? Phrase.Of($"ball") : Phrase.Of($"balls"))} of {new Length(size.Width)}"),
        Answer.Number number => Phrase.Of($"{Not}{BenchText.Of(number.Value, Row.Trait)}"),
        _ => Phrase.Of($"{(IsDenied ? Phrase.Of($"no ") : null)}{Quoted}"),
    };

    private Phrase? Not => IsDenied ? Phrase.Of($"not ") : null;

    private string Quoted => Row.Trait.Key.Kind == TraitKind.Mark ? $"\"{Row.Trait.Phrase}\"" : Row.Trait.Phrase;

    /// <summary>Whether a revision may have given this observation.</summary>
    /// <param name="revision">The revision's place in its part.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public bool Admits(int revision, double tolerance) =>
        Row.Answers[revision] is Answer.Unknown || Row.Answers[revision].Admits(Answer, tolerance) != IsDenied;

    /// <summary>Whether no part whatever can give both observations.</summary>
    /// <param name="other">Another observation.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public bool Contradicts(Observation other, double tolerance)
    {
        if (Part != other.Part) return false;
        var (mine, its) = (Has, other.Has);
        if (mine.Any(other.Lacks.Contains) || its.Any(Lacks.Contains)) return true;
        if (Row.Trait.Key != other.Row.Trait.Key) return false;
        return (Answer, other.Answer) switch
        {
            (Answer.Number a, Answer.Number b) => IsDenied || other.IsDenied ? IsDenied != other.IsDenied && a.Value == b.Value : a.Value != b.Value,
            // Two holes side by side have a size each.
            (Answer.Sizes, Answer.Sizes) => Answer.DiffersSurely(other.Answer, tolerance) && !Row.Answers.Any(answer => answer is Answer.Sizes { All.Length: > 1 }),
            _ => false,
        };
    }

    // What the part must have for this to be seen, and what it cannot have. Counts speak for themselves.
    private HashSet<TraitKey> Has => Answer switch
    {
        Answer.YesNo when !IsDenied => [Row.Trait.Key, .. Row.Trait.Implied],
        Answer.Sizes => [.. Row.Trait.Implied],
        _ => [],
    };

    private HashSet<TraitKey> Lacks => Answer switch
    {
        Answer.YesNo when IsDenied => [Row.Trait.Key],
        Answer.YesNo => [.. Row.Trait.Excluded],
        _ => [],
    };
}
