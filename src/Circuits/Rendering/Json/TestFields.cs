using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Advice;

namespace Circuits.Rendering.Json;

/// <summary>A step of a plan: a test, or what remains.</summary>
[JsonDerivedType(typeof(TestFields)), JsonDerivedType(typeof(RemainFields))]
internal abstract class StepFields
{
    public static StepFields Of(PlanStep step, ImmutableArray<string> codes) =>
        step.Test is { } test ? new TestFields(test, codes, step.Branches) : new RemainFields(step.Remaining.Select(index => codes[index]));
}

internal sealed class RemainFields : StepFields
{
    private readonly IEnumerable<string> left;

    internal RemainFields(IEnumerable<string> left) => this.left = left;

    [Description("Codes of the faults that remain.")] public IEnumerable<string> Remain => left;
}

/// <summary>A test; with branches, what to do after each of its outcomes.</summary>
internal sealed class TestFields : StepFields
{
    private readonly WeighedTest test;
    private readonly ImmutableArray<string> codes;
    private readonly ImmutableArray<PlanStep> branches;

    internal TestFields(WeighedTest test, ImmutableArray<string> codes, ImmutableArray<PlanStep> branches) =>
        (this.test, this.codes, this.branches) = (test, codes, branches);

    public TestKind Kind => test.Kind;
    [Description("What to do.")] public Phrase Do => test.Text;
    [Description("What it costs.")] public double Cost => Fields.Rounded(test.Cost, 3);
    [Description("How much it tells.")] public double Bits => Fields.Rounded(test.Bits, 4);

    [Description("What may come of it, likeliest first.")]
    public IEnumerable<OutcomeFields> Outcomes => test.Outcomes.Select((outcome, i) => new OutcomeFields(outcome, codes, branches.IsEmpty ? null : branches[i]));
}

internal sealed class OutcomeFields
{
    private readonly TestOutcome outcome;
    private readonly ImmutableArray<string> codes;
    private readonly PlanStep? step;

    internal OutcomeFields(TestOutcome outcome, ImmutableArray<string> codes, PlanStep? step) => (this.outcome, this.codes, this.step) = (outcome, codes, step);

    public Phrase Outcome => outcome.Text;
    [Description("How likely it is.")] public double Share => Fields.Rounded(outcome.Share, 4);
    [Description("Codes of the faults that remain then.")] public IEnumerable<string> Remain => outcome.Members.Select(index => codes[index]);
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] public StepFields? Then => step is null ? null : StepFields.Of(step, codes);
}
