using System.Collections.Immutable;

namespace Circuits.Studies.Identify;

/// <summary>What a question can come to.</summary>
/// <param name="Answer">What is found; of sizes that a gauge may take for one another, all of them.</param>
/// <param name="Revisions">The revisions that may remain then, by their place in the part, in rising order.</param>
/// <param name="Next">The number of the step that asks on, or null when no question tells the rest apart.</param>
public sealed record Outcome(Answer Answer, ImmutableArray<int> Revisions, int? Next);

/// <summary>A question to the part on the bench.</summary>
/// <param name="Number">Its number, from 1, the first to ask.</param>
/// <param name="Row">The trait asked for.</param>
/// <param name="Outcomes">What it can come to.</param>
/// <param name="Same">Other traits that part the revisions just so, easiest first.</param>
public sealed record Step(int Number, TraitRow Row, ImmutableArray<Outcome> Outcomes, ImmutableArray<TraitRow> Same);

/// <summary>Finds the order of questions that tells revisions apart soonest.</summary>
internal static class Splitter
{
    // Sums of logarithms that are equal by rights differ in their last digits.
    private const int Digits = 9;

    /// <summary>
    /// The questions, each the one that leaves least to tell apart on average when every revision is as likely as another
    /// (least expected entropy); of equals the easiest to find out, then the first of the file.
    /// </summary>
    /// <param name="rows">The traits.</param>
    /// <param name="remaining">The revisions to tell apart, in rising order.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public static ImmutableArray<Step> Order(ImmutableArray<TraitRow> rows, ImmutableArray<int> remaining, double tolerance)
    {
        var steps = new List<Step?>();
        Ask(rows, remaining, tolerance, steps);
        return [.. steps.OfType<Step>()];
    }

    /// <summary>What the question for a trait can come to; fewer than two outcomes when it tells nothing apart for sure.</summary>
    public static ImmutableArray<Outcome> Outcomes(TraitRow row, ImmutableArray<int> remaining, double tolerance)
    {
        var known = remaining.Where(revision => row.Answers[revision] is not Answer.Unknown).ToList();
        var open = remaining.Where(revision => row.Answers[revision] is Answer.Unknown).ToList();
        var clusters = new List<List<int>>();
        foreach (var revision in known)
        {
            // Sizes chain: 1.0 may be taken for 1.1, and 1.1 for 1.2; then the three are one outcome.
            var met = clusters.Where(cluster => cluster.Exists(other => !row.Answers[revision].DiffersSurely(row.Answers[other], tolerance))).ToList();
            clusters.RemoveAll(met.Contains);
            clusters.Add([.. met.SelectMany(cluster => cluster), revision]);
        }

        return [.. clusters
            .Select(cluster => new Outcome(Joined(cluster.Select(revision => row.Answers[revision])), [.. cluster.Concat(open).Order()], null))
            .OrderBy(outcome => Rank(outcome.Answer))];
    }

    /// <summary>
    /// Whether the outcomes tell anything apart. Whether there is something to measure at all is no question of size: seeing
    /// tells that.
    /// </summary>
    public static bool Tells(ImmutableArray<Outcome> outcomes) =>
        outcomes.Count(outcome => outcome.Answer is not Answer.Sizes { All.IsEmpty: true }) > 1
        || (outcomes.Length > 1 && outcomes[0].Answer is not Answer.Sizes);

    /// <summary>What is left to tell apart after the question, on average, in bits.</summary>
    public static double ExpectedEntropy(ImmutableArray<Outcome> outcomes, ImmutableArray<int> remaining)
    {
        var sum = 0.0;
        foreach (var revision in remaining)
        {
            // A revision that may give several answers gives each of them as likely.
            var possible = outcomes.Where(outcome => outcome.Revisions.Contains(revision)).ToList();
            sum += possible.Sum(outcome => Math.Log2(outcome.Revisions.Length)) / possible.Count;
        }

        return Math.Round(sum / remaining.Length, Digits);
    }

    private static int? Ask(ImmutableArray<TraitRow> rows, ImmutableArray<int> remaining, double tolerance, List<Step?> steps)
    {
        var questions = rows.Where(row => row.IsListed)
            .Select(row => (Row: row, Outcomes: Outcomes(row, remaining, tolerance)))
            .Where(question => Tells(question.Outcomes))
            .OrderBy(question => ExpectedEntropy(question.Outcomes, remaining))
            .ThenBy(question => question.Row.Trait.Means)
            .ToList();
        if (questions.Count == 0) return null;
        var (best, outcomes) = questions[0];
        var at = steps.Count;
        steps.Add(null);
        var next = outcomes.Select(outcome => outcome with { Next = Ask(rows, outcome.Revisions, tolerance, steps) }).ToImmutableArray();
        var same = questions.Skip(1).Where(other => SameSplit(other.Outcomes, outcomes)).Select(other => other.Row);
        steps[at] = new Step(at + 1, best, next, [.. same]);
        return at + 1;
    }

    private static bool SameSplit(ImmutableArray<Outcome> one, ImmutableArray<Outcome> other) =>
        one.Length == other.Length && one.All(mine => other.Any(its => its.Revisions.AsSpan().SequenceEqual(mine.Revisions.AsSpan())));

    private static Answer Joined(IEnumerable<Answer> answers)
    {
        var all = answers.ToList();
        return all[0] is Answer.Sizes
            ? new Answer.Sizes([.. all.Cast<Answer.Sizes>().SelectMany(sizes => sizes.All).Distinct().OrderBy(size => size.Width).ThenBy(size => size.Length)])
            : all[0];
    }

    // Seen before not seen; counts and sizes in rising order, nothing to measure last.
    private static (int, double, double) Rank(Answer answer) => answer switch
    {
        Answer.YesNo yes => (0, yes.Value ? 0 : 1, 0),
        Answer.Number number => (0, number.Value, 0),
        Answer.Sizes { All: [var size, ..] } => (0, size.Width, size.Length ?? 0),
        _ => (1, 0, 0),
    };
}
