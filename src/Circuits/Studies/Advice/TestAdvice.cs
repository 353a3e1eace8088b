using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>Which test tells most for its cost, and what to do after it.</summary>
public sealed class TestAdvice
{
    /// <summary>Less than this, in bits, is not worth the trouble.</summary>
    private const double LeastBits = 0.05;

    private readonly ImmutableArray<Candidate> candidates;
    private readonly double[] weights;
    private readonly ImmutableArray<ProposedTest> proposed;
    private readonly Func<TestKind, double> cost;

    internal TestAdvice(ImmutableArray<Candidate> candidates, IEnumerable<ITestSource> sources, Func<TestKind, double> cost)
    {
        this.candidates = candidates;
        this.cost = cost;
        var best = candidates.IsEmpty ? 0 : candidates.Max(candidate => candidate.Score);
        weights = [.. candidates.Select(candidate => Math.Exp(candidate.Score - best))];
        proposed = [.. sources.SelectMany(source => source.Propose(candidates)).Where(test => test.Outcomes.Distinct().Skip(1).Any())];
    }

    /// <summary>The candidates that tests are to tell apart.</summary>
    public ImmutableArray<Candidate> Candidates => candidates;

    /// <summary>Advice for a diagnosis.</summary>
    /// <param name="solver">The solver that it was made with.</param>
    /// <param name="report">The diagnosis.</param>
    public static TestAdvice For(EffectSolver solver, DiagnosisReport report)
    {
        // Far down the list the candidates hardly weigh, and there may be thousands.
        const int Most = 200;
        var unit = solver.Unit;
        ImmutableArray<Candidate> candidates = [.. report.Explaining.SelectMany(known => known.Members).Take(Most)];
        if (RollTests.Lock(report, candidates) is { } mechanical) candidates = candidates.Add(mechanical);
        return new TestAdvice(
            candidates,
            [
                new RollTests(unit, report), new GaugeTests(unit, report.Evidence), new DriveTests(unit, report), new ScanToolTests(solver, report),
                new AirTests(solver.Assembly, report.Evidence), new BenchTests(),
            ],
            unit.TestCosts.Of);
    }

    /// <summary>The tests that tell something, those that tell most for their cost first.</summary>
    /// <param name="remaining">The candidates that remain, by their numbers.</param>
    public ImmutableArray<WeighedTest> Best(ImmutableArray<int> remaining) => [.. All(remaining).Where(test => test.Bits > LeastBits)];

    /// <summary>The tests that tell anything at all, those that tell most for their cost first.</summary>
    /// <param name="remaining">The candidates that remain, by their numbers.</param>
    internal ImmutableArray<WeighedTest> All(ImmutableArray<int> remaining) =>
    [
        .. proposed.Select(test => Weigh(test, remaining)).Where(test => test.Outcomes.Length > 1)
            .OrderByDescending(test => Math.Round(test.Bits / test.Cost, 12)).ThenBy(test => test.Cost),
    ];

    /// <summary>The tests for all candidates.</summary>
    public ImmutableArray<WeighedTest> Best() => Best([.. Enumerable.Range(0, candidates.Length)]);

    /// <summary>What to do, step by step.</summary>
    /// <param name="depth">How many tests deep.</param>
    public PlanStep Plan(int depth) => Plan([.. Enumerable.Range(0, candidates.Length)], depth);

    private PlanStep Plan(ImmutableArray<int> remaining, int depth)
    {
        if (depth <= 0 || remaining.Length < 2 || Best(remaining) is not [var test, ..]) return new PlanStep(null, remaining, []);
        return new PlanStep(test, remaining, [.. test.Outcomes.Select(outcome => Plan(outcome.Members, depth - 1))]);
    }

    private WeighedTest Weigh(ProposedTest test, ImmutableArray<int> remaining)
    {
        var total = remaining.Sum(index => weights[index]);
        var outcomes = remaining.GroupBy(index => test.Outcomes[index])
            .Select(group => new TestOutcome(group.Key, group.Sum(index => weights[index]) / total, [.. group]))
            .OrderByDescending(outcome => Math.Round(outcome.Share, 12)).ToImmutableArray();
        var bits = outcomes.Length < 2 ? 0 : -outcomes.Where(outcome => outcome.Share > 0).Sum(outcome => outcome.Share * Math.Log2(outcome.Share));
        return new WeighedTest(test.Kind, test.Text, cost(test.Kind), bits, outcomes);
    }
}
