using Rule = Circuits.Findings.Rule;

namespace Circuits.Rendering;

/// <summary>What rules mean, for people.</summary>
public static class RulesText
{
    /// <summary>A rule in full; every line ends with a newline.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(Rule rule, TextOptions options)
    {
        var page = new Page(options);
        page.Item("", 0, null, (rule.Name, Page.Strong), ($"   {Words.Of(rule.Severity)}", Page.Plain));
        page.Blank();
        page.Line(rule.Meaning);
        page.Heading("On the road");
        page.Line(rule.OnTheRoad, indent: 2);
        page.Heading("Example");
        page.Verbatim(rule.Example, indent: 2);
        page.Heading("To mend it");
        page.Line(rule.Mend, indent: 2);
        return page.ToString();
    }

    /// <summary>Every rule on a line or two; every line ends with a newline.</summary>
    /// <param name="rules">The rules, in the order to show them.</param>
    /// <param name="options">How to lay it out.</param>
    public static string List(IEnumerable<Rule> rules, TextOptions options)
    {
        var page = new Page(options);
        var table = Page.Table();
        table.AddColumn(page.Column("rule"));
        table.AddColumn(page.Column("severity"));
        table.AddColumn(page.Column("what a finding says", wrap: true, gap: 0));
        foreach (var rule in rules)
            table.AddRow(page.Cell(rule.Name, Page.Strong), page.Cell(Words.Of(rule.Severity)), page.Cell(rule.Meaning));
        page.Put(table);
        return page.ToString();
    }
}
