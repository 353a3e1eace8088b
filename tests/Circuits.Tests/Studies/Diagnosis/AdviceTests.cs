using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>Which test to make next.</summary>
public class AdviceTests
{
    private static Candidate Candidate(double weight) => new([], [], [], Math.Log(weight)) { Mechanical = $"candidate {weight}" };

    private sealed class Given(params ProposedTest[] tests) : ITestSource
    {
        public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates) => tests;
    }

    // Four candidates of 4, 2, 1, 1: halves tell 1 bit, three outcomes (4 | 2 | 1 + 1) tell 1.5, the last two alone 0.811 (4 + 2 | 1 + 1).
    private static ProposedTest Proposed(TestKind kind, string text, string[] outcomes) =>
        new(kind, Phrase.Of($"{text}"), [.. outcomes.Select(outcome => Phrase.Of($"{outcome}"))]);

    [Fact]
    public void A_test_is_worth_the_entropy_of_its_outcomes_over_its_cost()
    {
        ImmutableArray<Candidate> four = [Candidate(4), Candidate(2), Candidate(1), Candidate(1)];
        var advice = new TestAdvice(
            four,
            [
                new Given(
                    Proposed(TestKind.Gauge, "three", ["a", "b", "c", "c"]), Proposed(TestKind.Roll, "halves", ["a", "b", "b", "b"]),
                    Proposed(TestKind.Pin, "quarter", ["a", "a", "b", "b"]), Proposed(TestKind.Pin, "nothing", ["a", "a", "a", "a"])),
            ],
            kind => kind == TestKind.Roll ? 1 : 2);
        var best = advice.Best();
        Assert.Equal(["halves", "three", "quarter"], best.Select(test => test.Text.Words()));
        Assert.Equal([1, 1.5, 0.8113], best.Select(test => Math.Round(test.Bits, 4)));
        Assert.Equal([0.5, 0.25, 0.25], best[1].Outcomes.Select(outcome => outcome.Share));
        var plan = advice.Plan(3);
        Assert.Equal("halves", plan.Test!.Text.Words());
        Assert.Equal([0], plan.Branches[0].Remaining);
        Assert.Equal("three", plan.Branches[1].Test!.Text.Words());
        Assert.Equal(["1", "2 3"], plan.Branches[1].Branches.Select(leaf => string.Join(' ', leaf.Remaining)));
    }

    [Fact]
    public void A_gauge_parts_readings_that_are_further_apart_than_it_can_be_wrong() =>
        Assert.Equal(["no pressure", "50 to 80 kPa", "50 to 80 kPa", "500 kPa", "no pressure"], GaugeTests.Groups([0, 50, 80, 500, 0.4]).Select(group => group.Words()));

    [Fact]
    public void Where_it_binds_the_vehicle_is_pushed_first_for_a_lock_need_not_be_hydraulic()
    {
        var demo = new DemoUnit("firth/firth.yaml");
        var solver = new EffectSolver(demo.Judge, Assembly.DefaultOf(demo.Unit));
        var told = new EvidenceReader(demo.Judge).Complaint("tie-up in 3").Evidence!;
        var report = DiagnosisStudy.Run(solver, [told], new DiagnosisOptions { Pairs = false, Threads = 2 }, TestContext.Current.CancellationToken);
        Assert.NotEmpty(report.Explaining);
        var advice = TestAdvice.For(solver, report);
        var roll = Assert.Single(advice.Best(), test => test.Kind == TestKind.Roll);
        Assert.Equal(["it rolls both ways", "it rolls one way, or not at all"], roll.Outcomes.Select(outcome => outcome.Text.Words()));
        Assert.Equal(0.1, roll.Outcomes[1].Share, 3);
        Assert.Contains(report.LookAlikes, sentence => sentence.Words().StartsWith("A mechanical lock", StringComparison.Ordinal));

        // Nobody drives to see what happens where a candidate lets expect a lock.
        Assert.DoesNotContain(advice.Best(), test => test.Kind == TestKind.Drive && test.Outcomes.Any(outcome => outcome.Text.Words().StartsWith("tie-up", StringComparison.Ordinal)));
    }

    // Every leaf of a plan holds candidates that its path lets expect, and every candidate is in just one leaf.
    [Theory]
    [InlineData("rill/rill.yaml", "no reverse")]
    [InlineData("weir/weir.yaml", "no third")]
    [InlineData("firth/firth.yaml", "slips in 4")]
    public void A_plan_parts_the_candidates(string file, string complaint)
    {
        var demo = new DemoUnit(file);
        var solver = new EffectSolver(demo.Judge, Assembly.DefaultOf(demo.Unit));
        var report = DiagnosisStudy.Run(
            solver, [new EvidenceReader(demo.Judge).Complaint(complaint).Evidence!], new DiagnosisOptions { Pairs = false, Threads = 2 }, TestContext.Current.CancellationToken);
        var advice = TestAdvice.For(solver, report);
        Assert.True(advice.Candidates.Length > 1);
        var leaves = Leaves(advice.Plan(6)).ToList();
        Assert.Equal(Enumerable.Range(0, advice.Candidates.Length), leaves.SelectMany(leaf => leaf.Remaining).Order());
        Assert.True(leaves.Count > 1);
        Assert.All(advice.Best(), test => Assert.Equal(1, test.Outcomes.Sum(outcome => outcome.Share), 9));
    }

    private static IEnumerable<PlanStep> Leaves(PlanStep step) => step.Test is null ? [step] : step.Branches.SelectMany(Leaves);
}
