using System.Collections.Immutable;
using Circuits.Reading;
using Circuits.Studies.Identify;
using Circuits.Tests.Properties;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>What must hold of every unit.</summary>
public class IdentifyProperties
{
    private const int Units = 150;

    private static readonly double[] Tolerances = [0, 0.05, 0.2, 1];

    /// <summary>A part looked at in every way is known, but for those that look just like it; and every phrase of a sheet is understood.</summary>
    [Fact]
    public void All_that_a_revision_shows_leaves_those_that_look_like_it() => Hold((unit, bench, tolerance) =>
    {
        foreach (var part in bench.Traits)
        {
            var spec = unit.Part(part.Part.Name);
            for (var i = 0; i < part.Part.Revisions.Length; i++)
            {
                var told = AllOf(bench, part, i);
                var remaining = Remaining(bench, part, told, tolerance);
                var expected = Enumerable.Range(0, spec.Revisions.Length).Where(other => Looks.Same(spec, spec.Revisions[i], spec.Revisions[other], tolerance));
                if (!remaining.SequenceEqual(expected))
                    return $"looks: {part.Part.Name} r{i + 1} leaves {Names(remaining)} and not {Names(expected)}\n{string.Join('\n', told.Select(observation => observation.Text))}";
                if (Identifier.Contradiction([.. told], tolerance) is var (one, other2)) return $"contradiction: {one.Text} and {other2.Text}";
            }
        }

        return null;
    });

    /// <summary>The first question is worked out again by trying every answer of every revision; each question tells something apart.</summary>
    [Fact]
    public void Every_question_splits_and_none_splits_better() => Hold((_, bench, tolerance) =>
    {
        foreach (var part in bench.Run(tolerance).Parts)
        {
            var listed = part.Traits.Rows.Where(row => row.IsListed).ToList();
            if (Fault(part, listed, part.Remaining, part.Steps.Length > 0 ? 1 : null, tolerance) is { } fault) return $"split: {part.Part.Name}: {fault}";
        }

        return null;
    });

    [Fact]
    public void The_order_of_observations_does_not_matter_and_each_narrows() => Hold((_, bench, tolerance) =>
    {
        var dice = new Dice(new PCG(7, 11));
        foreach (var part in bench.Traits)
        {
            // Taken from several revisions, so that they may fit none.
            var told = dice.Shuffle(AllOf(bench, part, dice.Next(part.Part.Revisions.Length)).Concat(AllOf(bench, part, dice.Next(part.Part.Revisions.Length)))).Take(6).ToList();
            var together = Remaining(bench, part, told, tolerance);
            var backwards = Remaining(bench, part, Enumerable.Reverse(told).ToList(), tolerance);
            if (!together.SequenceEqual(backwards)) return $"order: {Names(together)} or {Names(backwards)}";
            var apart = told.Aggregate(Enumerable.Range(0, part.Part.Revisions.Length), (left, one) => left.Intersect(Remaining(bench, part, [one], tolerance)));
            if (!together.SequenceEqual(apart)) return $"together: {Names(together)}, one by one {Names(apart)}";
        }

        return null;
    });

    private static string? Fault(PartIdentity part, List<TraitRow> rows, ImmutableArray<int> remaining, int? at, double tolerance)
    {
        var best = rows.Select(row => Entropy(row, remaining, tolerance)).Append(double.PositiveInfinity).Min();
        if (at is not { } number) return remaining.Length > 1 && best < Math.Log2(remaining.Length) - 1e-6 ? $"{Names(remaining)} could still be told apart" : null;
        var step = part.Steps[number - 1];
        if (step.Number != number) return $"step {number} is numbered {step.Number}";
        if (step.Outcomes.Length < 2 || step.Outcomes.Any(outcome => outcome.Revisions.Length >= remaining.Length)) return $"{step.Row.Trait.Phrase} splits nothing of {Names(remaining)}";
        if (!step.Outcomes.SelectMany(outcome => outcome.Revisions).Distinct().Order().SequenceEqual(remaining)) return $"{step.Row.Trait.Phrase} loses revisions of {Names(remaining)}";
        var chosen = Entropy(step.Row, remaining, tolerance);
        if (chosen > best + 1e-6) return $"{step.Row.Trait.Phrase} leaves {chosen} bits, {best} are possible";
        var easier = rows.Find(row => row.Trait.Means < step.Row.Trait.Means && Math.Abs(Entropy(row, remaining, tolerance) - best) < 1e-6);
        if (easier is not null) return $"{easier.Trait.Phrase} is easier than {step.Row.Trait.Phrase}";
        return step.Outcomes.Select(outcome => Fault(part, rows, outcome.Revisions, outcome.Next, tolerance)).FirstOrDefault(fault => fault is not null);
    }

    // Whatever the bench finds on a revision, all that a gauge may take it for remain: the closure of "may be taken for".
    private static double Entropy(TraitRow row, ImmutableArray<int> remaining, double tolerance)
    {
        var sure = remaining.Where(revision => row.Answers[revision] is not Answer.Unknown).ToList();
        var vague = remaining.Length - sure.Count;
        var classes = new Dictionary<int, HashSet<int>>();
        foreach (var revision in sure) classes[revision] = [revision];
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var one in sure)
            {
                foreach (var other in sure.Where(other => !classes[one].Contains(other) && classes[one].Any(member => Close(row.Answers[member], row.Answers[other], 2 * tolerance))))
                    changed |= classes[one].Add(other);
            }
        }

        var distinct = classes.Values.Select(set => (Members: string.Join(',', set.Order()), set.Count)).Distinct().ToList();
        var useful = row.Answers.Any(answer => answer is Answer.Sizes)
            ? classes.Where(pair => row.Answers[pair.Key] is Answer.Sizes { All.IsEmpty: false }).Select(pair => string.Join(',', pair.Value.Order())).Distinct().Count()
            : distinct.Count;
        if (useful < 2) return double.PositiveInfinity;
        var known = sure.Sum(revision => Math.Log2(classes[revision].Count + vague));
        var open = vague * distinct.Average(set => Math.Log2(set.Count + vague));
        return (known + open) / remaining.Length;
    }

    private static bool Close(Answer a, Answer b, double millimetres) => (a, b) switch
    {
        (Answer.Sizes one, Answer.Sizes other) => (one.All.IsEmpty && other.All.IsEmpty) || one.All.Any(x => other.All.Any(y =>
            Math.Abs(x.Width - y.Width) <= millimetres + 1e-6 && Math.Abs((x.Length ?? 0) - (y.Length ?? 0)) <= millimetres + 1e-6)),
        _ => Bench.Word(a) == Bench.Word(b),
    };

    /// <summary>Everything that a bench finds on a revision, told in the sheet's words.</summary>
    private static List<Observation> AllOf(Bench bench, PartTraits part, int revision)
    {
        var told = new List<Observation>();
        foreach (var row in part.Rows)
        {
            var phrase = row.Trait.Phrase;
            switch (row.Answers[revision])
            {
                case Answer.YesNo yes:
                    told.Add(bench.Told($"{(yes.Value ? "seen" : "not")} {bench.Reader.Spelled(row.Trait, phrase)}"));
                    break;
                case Answer.Number number:
                    told.Add(bench.Told($"seen {part.Part.Name}: {number.Value} {phrase}"));
                    break;
                case Answer.Sizes sizes:
                    told.AddRange(sizes.All.Select(size => bench.Told(FormattableString.Invariant(
                        $"measured {bench.Reader.Spelled(row.Trait, phrase)}={size.Width}{(size.Length is { } length ? FormattableString.Invariant($" x {length}") : "")} mm"))));
                    break;
            }

            Assert.True(told.Count == 0 || row.Answers[revision] is Answer.Unknown or Answer.Sizes { All.IsEmpty: true } || (told[^1].Row.Trait.Key == row.Trait.Key && told[^1].Part == part.Part.Name), phrase);
        }

        return told;
    }

    private static ImmutableArray<int> Remaining(Bench bench, PartTraits part, List<Observation> told, double tolerance) =>
        Identifier.Run(bench.Unit, [part], [.. told], tolerance).Parts[0].Remaining;

    private static string Names(IEnumerable<int> revisions) => string.Join(' ', revisions.Select(revision => $"r{revision + 1}"));

    private static void Hold(Func<UnitSpec, Bench, double, string?> check)
    {
        var (turn, read) = (0, 0);
        Property.ForAll(new BenchGen(), Units, unit =>
        {
            // A changed unit may name what another change took away; then it is no unit.
            if (CircuitReader.ReadText(SpecText.Of(unit), "drawn.yaml").Unit is not { } known) return null;
            read++;
            return check(unit, new Bench(known), Tolerances[turn++ % Tolerances.Length]);
        }, unit => [], unit => SpecText.Of(unit));
        Assert.True(read > Units / 2, $"only {read} units could be read");
    }
}
