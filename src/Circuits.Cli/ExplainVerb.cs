using System.CommandLine;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Rendering;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary><c>explain</c>: what a finding means and how to mend it.</summary>
internal static class ExplainVerb
{
    public static Verb Create(CommonOptions options)
    {
        var names = new Argument<string[]>("RULE")
        {
            Arity = ArgumentArity.ZeroOrMore,
            Description = "The rule's name as findings give it; without one, every rule is listed.",
        };
        Completes.With(names, () => RuleCatalogue.All.Select(rule => rule.Name));
        return new Verb(
            "explain", "What a finding means, why it matters on the road, and how to mend it.",
            [names, options.Format, options.Output],
            ["circuits explain", "circuits explain lost-supply"],
            session => Run(session, session.Parsed.GetValue(names) ?? []));
    }

    private static int Run(Session session, string[] names)
    {
        var known = RuleCatalogue.All;
        List<Rule> rules = [.. names.Select(name => RuleCatalogue.Find(name) ?? throw Unknown(name, known.Select(rule => rule.Name)))];
        if (session.Format == OutputFormat.Json)
            session.Finish(JsonText.Of(Documents.Of(names.Length == 0 ? known : rules)));
        else
            session.Finish(names.Length == 0 ? RulesText.List(known, session.Text) : string.Join('\n', rules.Select(rule => RulesText.Of(rule, session.Text))));
        return ExitCode.Fine;
    }

    private static UserError Unknown(string name, IEnumerable<string> known) => new(
        UserError.Usage, $"unknown rule '{name}'",
        DidYouMean.Find(name, known) is { } close ? $"Did you mean {close}?" : "circuits explain lists every rule.");
}
