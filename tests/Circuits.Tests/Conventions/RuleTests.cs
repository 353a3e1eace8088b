using System.Text.RegularExpressions;
using Circuits.Judging;
using Circuits.Tests.Cli;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>Every rule explains itself, and a case shows it.</summary>
public partial class RuleTests
{
    public static TheoryData<string> Names() => [.. RuleCatalogue.All.Select(rule => rule.Name)];

    [Fact]
    public void Names_are_unique_and_in_order()
    {
        var names = RuleCatalogue.All.Select(rule => rule.Name).ToList();
        Assert.NotEmpty(names);
        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_rule_is_named_in_plain_words_and_explained(string name)
    {
        var rule = RuleCatalogue.Find(name)!;
        Assert.Matches(Kebab(), rule.Name);
        foreach (var sentence in (string[])[rule.Meaning, rule.OnTheRoad, rule.Mend])
            Assert.Matches(Sentence(), sentence);
        Assert.False(string.IsNullOrWhiteSpace(rule.Example));
        Assert.NotEqual(rule.Meaning, rule.OnTheRoad);
    }

    // Cases of commands stand in files `out` and `err`, those of the reader in `*.expected`; what needs a file of 200 MB, say,
    // stands in code, with the rule's name in quotes or its class.
    [Theory]
    [MemberData(nameof(Names))]
    public void A_case_shows_the_rule(string name) =>
        Assert.Matches($@"\b(error|warning|note) {name}: |""{name}""|:\d+ {name} |\b{ClassOf(name)}\.Rule\b", CaseTexts.Value);

    private static string ClassOf(string name) => string.Concat(name.Split('-').Select(word => char.ToUpperInvariant(word[0]) + word[1..]));

    private static readonly Lazy<string> CaseTexts = new(() => string.Join('\n',
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "Circuits.Tests"), "*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".expected" or ".cs"
                || (file.StartsWith(CommandCase.Root, StringComparison.Ordinal) && Path.GetFileName(file) is "out" or "err"))
            .Select(File.ReadAllText)));

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex Kebab();

    [GeneratedRegex(@"^\S[\s\S]+[.)]$")]
    private static partial Regex Sentence();
}
