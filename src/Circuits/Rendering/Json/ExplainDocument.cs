using System.ComponentModel;
using Circuits.Findings;

namespace Circuits.Rendering.Json;

[Description("What rules mean.")]
internal sealed class ExplainDocument : Document
{
    private readonly IEnumerable<Rule> rules;

    internal ExplainDocument(IEnumerable<Rule> rules) : base("explain") => this.rules = rules;

    public IEnumerable<RuleFields> Rules => rules.Select(rule => new RuleFields(rule));
}

internal sealed class RuleFields
{
    private readonly Rule rule;

    internal RuleFields(Rule rule) => this.rule = rule;

    public string Rule => rule.Name;
    [Description("Only error makes the exit code 1.")] public Severity Severity => rule.Severity;
    [Description("What a finding of this rule says.")] public string Meaning => rule.Meaning;
    [Description("Why it matters.")] public string OnTheRoad => rule.OnTheRoad;
    [Description("A case, in a few lines.")] public string Example => rule.Example;
    [Description("What to do.")] public string Mend => rule.Mend;
}
