namespace Circuits.Studies.Identify;

/// <summary>A phrase understood as one about a part.</summary>
/// <param name="Row">The trait.</param>
/// <param name="Answer">What it is said to be.</param>
/// <param name="IsDenied">Whether it is said not to be that.</param>
internal sealed record PhraseMatch(TraitRow Row, Answer Answer, bool IsDenied)
{
    /// <summary>Whether any revision has the trait, or may have it.</summary>
    public bool IsKnown => Row.Answers.Any(answer => answer != TraitTable.AbsenceOf(Row.Trait.Key));

    public PhraseMatch Denied => this with { IsDenied = !IsDenied };
}

/// <summary>What came of reading a phrase as one about a part.</summary>
/// <param name="Match">What it was understood as, or null.</param>
/// <param name="Problem">Why it was not, where it was nearly understood, or null.</param>
internal readonly record struct PhraseReading(PhraseMatch? Match, string? Problem)
{
    public static PhraseReading Nothing => default;

    public static implicit operator PhraseReading(PhraseMatch match) => new(match, null);

    public static PhraseReading Fault(string problem) => new(null, problem);
}
