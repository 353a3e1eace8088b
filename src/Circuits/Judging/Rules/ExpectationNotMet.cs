using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>expectation-not-met</c>.</summary>
public static class ExpectationNotMet
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "expectation-not-met", Severity.Error,
        Meaning: "The file says what an assembly does in a gear, and it does something else.",
        OnTheRoad: "Somebody wrote down, on purpose, how these parts behave. Either an edit changed the circuit, or the record was wrong.",
        Example: "expect: body 2 with plate 1 is weak in R. It is lost.",
        Mend: "Look at the edit that came last. Correct the circuit, or the expectation with its reason.");
}
