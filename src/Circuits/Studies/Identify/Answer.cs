using System.Collections.Immutable;

namespace Circuits.Studies.Identify;

/// <summary>A size as a pin gauge or caliper gives it.</summary>
/// <param name="Width">A hole's or ball's diameter, a slot's shorter side, in millimetres.</param>
/// <param name="Length">A slot's longer side in millimetres; null for what is round, or when it was not measured.</param>
public readonly record struct BenchSize(double Width, double? Length)
{
    // Sizes come from decimal text and from inches; their differences carry rounding errors.
    private const double Rounding = 1e-6;

    /// <summary>Whether both may be one size, with this much between them.</summary>
    /// <param name="other">The other size.</param>
    /// <param name="millimetres">The greatest difference.</param>
    public bool IsWithin(BenchSize other, double millimetres) =>
        Math.Abs(Width - other.Width) <= millimetres + Rounding
        && (Length is not { } mine || other.Length is not { } its || Math.Abs(mine - its) <= millimetres + Rounding);
}

/// <summary>What a trait is on one revision of a part.</summary>
public abstract record Answer
{
    private Answer()
    {
    }

    /// <summary>The file does not say.</summary>
    public static Answer NotGiven { get; } = new Unknown();

    /// <summary>It is there.</summary>
    public static Answer Yes { get; } = new YesNo(true);

    /// <summary>It is not there.</summary>
    public static Answer No { get; } = new YesNo(false);

    /// <summary>There is nothing to count.</summary>
    public static Answer None { get; } = new Number(0);

    /// <summary>There is nothing to measure.</summary>
    public static Answer Nothing { get; } = new Sizes([]);

    /// <summary>The file does not say.</summary>
    public sealed record Unknown : Answer;

    /// <summary>It is there, or it is not.</summary>
    /// <param name="Value">Whether it is there.</param>
    public sealed record YesNo(bool Value) : Answer;

    /// <summary>A count.</summary>
    /// <param name="Value">How many.</param>
    public sealed record Number(int Value) : Answer;

    /// <summary>A size; several when several alike lie there, none when there is nothing to measure.</summary>
    /// <param name="All">The sizes.</param>
    public sealed record Sizes(ImmutableArray<BenchSize> All) : Answer;

    /// <summary>Whether a revision with this answer may have given the other one.</summary>
    /// <param name="observed">What was found out.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public bool Admits(Answer observed, double tolerance) => (this, observed) switch
    {
        (Unknown, _) or (_, Unknown) => true,
        (YesNo mine, YesNo its) => mine.Value == its.Value,
        (Number mine, Number its) => mine.Value == its.Value,
        (Sizes { All.IsEmpty: true }, Sizes its) => its.All.IsEmpty,
        (Sizes mine, Sizes its) => mine.All.Any(one => its.All.Any(other => one.IsWithin(other, tolerance))),
        _ => false,
    };

    /// <summary>Whether no observation can fit both, however it falls within the tolerance.</summary>
    /// <param name="other">The answer of another revision.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public bool DiffersSurely(Answer other, double tolerance) => !Admits(other, 2 * tolerance);
}

/// <summary>A trait, and what it is on every revision of its part.</summary>
/// <param name="Trait">The trait.</param>
/// <param name="Answers">Its answers, in the order of the part's revisions.</param>
/// <param name="IsListed">Whether a sheet names it; others are understood, but say no more than those that are named.</param>
public sealed record TraitRow(Trait Trait, ImmutableArray<Answer> Answers, bool IsListed);
