using System.Collections.Immutable;

namespace Circuits.Studies.Identify;

/// <summary>Collects traits while they are derived, revision by revision. What a revision does not say is an absence.</summary>
internal sealed class TraitTable(int revisions)
{
    private readonly Dictionary<TraitKey, Row> rows = [];
    private readonly List<Row> order = [];

    /// <summary>A revision has the trait.</summary>
    public void Yes(Trait trait, int revision, bool listed = true) => Set(trait, revision, Answer.Yes, listed);

    /// <summary>A revision may have the trait; the file does not say.</summary>
    public void Maybe(Trait trait, int revision, bool listed = true) => Set(trait, revision, Answer.NotGiven, listed);

    /// <summary>A revision has that many.</summary>
    public void Count(Trait trait, int revision, int count, bool listed = true) => Set(trait, revision, new Answer.Number(count), listed);

    /// <summary>A revision has the trait in a size; null when the size is not given or cannot be measured.</summary>
    public void Size(Trait trait, int revision, BenchSize? size)
    {
        var row = RowOf(trait, listed: true);
        row.Answers[revision] = (row.Answers[revision], size) switch
        {
            (Answer.Unknown, _) or (_, null) => Answer.NotGiven,
            (Answer.Sizes before, { } added) => new Answer.Sizes([.. before.All.Add(added).Distinct().Order(ByWidth)]),
            (var other, _) => other,
        };
    }

    /// <summary>The rows, in the order in which their traits were met.</summary>
    public ImmutableArray<TraitRow> Rows() => [.. order.Select(row => new TraitRow(row.Trait, [.. row.Answers], row.Listed))];

    private static readonly Comparer<BenchSize> ByWidth = Comparer<BenchSize>.Create((a, b) =>
        a.Width != b.Width ? a.Width.CompareTo(b.Width) : Nullable.Compare(a.Length, b.Length));

    /// <summary>What a trait is on a revision that does not have it.</summary>
    public static Answer AbsenceOf(TraitKey key) => key switch
    {
        { Sized: true } => Answer.Nothing,
        { Kind: TraitKind.HoleCount or TraitKind.BallCount or TraitKind.BallCountOfSize or TraitKind.FaceCount } => Answer.None,
        _ => Answer.No,
    };

    private void Set(Trait trait, int revision, Answer answer, bool listed)
    {
        var row = RowOf(trait, listed);
        // What is sure outweighs what is possible.
        if (answer is not Answer.Unknown || ReferenceEquals(row.Answers[revision], AbsenceOf(trait.Key))) row.Answers[revision] = answer;
    }

    private Row RowOf(Trait trait, bool listed)
    {
        if (!rows.TryGetValue(trait.Key, out var row))
        {
            var answers = new Answer[revisions];
            Array.Fill(answers, AbsenceOf(trait.Key));
            rows[trait.Key] = row = new Row(trait, answers);
            order.Add(row);
        }

        row.Listed |= listed;
        return row;
    }

    private sealed class Row(Trait trait, Answer[] answers)
    {
        public Trait Trait => trait;

        public Answer[] Answers => answers;

        public bool Listed { get; set; }
    }
}
