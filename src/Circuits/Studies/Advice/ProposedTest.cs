using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>A test that could be made, and what each candidate lets expect of it.</summary>
/// <param name="Kind">How it is made.</param>
/// <param name="Text">What to do: <c>gauge at direct in 3</c>.</param>
/// <param name="Outcomes">What comes of it under each candidate, in their order.</param>
public sealed record ProposedTest(TestKind Kind, Phrase Text, ImmutableArray<Phrase> Outcomes);

/// <summary>Proposes tests of some kind. Every kind of test is one of these, so that a new one plugs in.</summary>
internal interface ITestSource
{
    /// <summary>The tests that the unit allows and that may tell candidates apart.</summary>
    /// <param name="candidates">What may be wrong.</param>
    IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates);
}

/// <summary>What may come of a test.</summary>
/// <param name="Text">What is seen, read or felt.</param>
/// <param name="Share">How likely it is, 0 to 1.</param>
/// <param name="Members">The candidates that let expect it, by their numbers.</param>
public sealed record TestOutcome(Phrase Text, double Share, ImmutableArray<int> Members);

/// <summary>A test with what it is worth.</summary>
/// <param name="Kind">How it is made.</param>
/// <param name="Text">What to do.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="Bits">How much it tells, in bits: what is known after it, on average.</param>
/// <param name="Outcomes">What may come of it, likeliest first.</param>
public sealed record WeighedTest(TestKind Kind, Phrase Text, double Cost, double Bits, ImmutableArray<TestOutcome> Outcomes);

/// <summary>A step of a plan.</summary>
/// <param name="Test">The test; null where nothing more can be told apart, or the plan ends.</param>
/// <param name="Remaining">The candidates that remain here, by their numbers.</param>
/// <param name="Branches">What to do next, for each outcome of the test in its order.</param>
public sealed record PlanStep(WeighedTest? Test, ImmutableArray<int> Remaining, ImmutableArray<PlanStep> Branches);
