using Circuits.Findings;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>
/// Every file in <c>bad</c> is read; what must be found stands beside it in a file of the same name, one
/// <c>file:line:column rule message</c> a line.
/// </summary>
public sealed class BadFileTests
{
    private static readonly string Folder = TestFiles.Find("Reading/bad");

    public static TheoryData<string> Cases() => [.. Directory.EnumerateFiles(Folder, "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_fault_is_found_at_its_place(string name)
    {
        var result = CircuitReader.ReadFile(Path.Combine(Folder, name + ".yaml"));
        Assert.Null(result.Unit);
        var expected = File.ReadAllLines(Path.Combine(Folder, name + ".expected"));
        Assert.NotEmpty(expected);
        Assert.Equal(expected, result.Findings.Select(finding => $"{finding.Place} {finding.Rule} {finding.Words()}".Replace(Folder + "/", "", StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_finding_is_an_error_on_one_line_that_says_what_to_do(string name)
    {
        foreach (var finding in CircuitReader.ReadFile(Path.Combine(Folder, name + ".yaml")).Findings)
        {
            Assert.Equal(Severity.Error, finding.Severity);
            Assert.False(string.IsNullOrWhiteSpace(finding.Help), finding.Words());
            Assert.DoesNotContain('\n', finding.Words());
            Assert.False(finding.Words().EndsWith('.'), finding.Words());
            Assert.True(finding.Words().Length < 200, finding.Words());
            Assert.Contains(finding.Rule, ReadingRules.All.Select(rule => rule.Name));
        }
    }

    [Fact]
    public void Every_expectation_has_its_file()
    {
        var files = Directory.EnumerateFiles(Folder, "*.expected").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal);
        Assert.Equal(Cases().Select(row => row.Data), files);
    }
}
