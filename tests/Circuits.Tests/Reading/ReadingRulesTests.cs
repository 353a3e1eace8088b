using Circuits.Findings;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

public sealed class ReadingRulesTests
{
    [Fact]
    public void Names_are_unique_plain_words_in_order()
    {
        var names = ReadingRules.All.Select(rule => rule.Name).ToList();
        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
        Assert.All(names, name => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", name));
    }

    [Fact]
    public void Every_rule_is_explained()
    {
        Assert.All(ReadingRules.All, rule =>
        {
            foreach (var text in new[] { rule.Meaning, rule.OnTheRoad, rule.Mend }) Assert.EndsWith(".", text);
            Assert.NotEmpty(rule.Example);
            Assert.Equal(rule.Name == "unlikely-size" ? Severity.Warning : Severity.Error, rule.Severity);
        });
    }

    [Fact]
    public void Every_rule_has_a_case()
    {
        var inFiles = Directory.EnumerateFiles(TestFiles.Find("Reading/bad"), "*.expected")
            .SelectMany(File.ReadAllLines)
            .Select(line => line.Split(' ')[1]);
        Assert.Empty(ReadingRules.All.Select(rule => rule.Name).Except(inFiles).Except(GeneratedFileTests.Rules).Except(ChangeSetTests.Rules).Except(PlausibleRangeTests.Rules));
    }
}
