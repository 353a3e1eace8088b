using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering;

/// <summary>Turns what was looked at into cases.</summary>
public static class TestedCases
{
    /// <summary>A case for each gear of an assembly, and one for what belongs to no single gear.</summary>
    /// <param name="report">The assembly's report.</param>
    public static ImmutableArray<TestedCase> Of(AssemblyReport report)
    {
        var group = NameOf(report.Assembly.Unit, report.Assembly.Choice);
        var gears = report.Gears.Select(gear => new TestedCase(group, $"gear {gear.Gear}", [.. report.Findings.Where(finding => finding.Gear == gear.Gear)])
        {
            Outcome = Words.Of(gear.Verdict),
        });
        var whole = report.Findings.Where(finding => finding.Gear is null && !finding.Assembly.IsEmpty).ToImmutableArray();
        return whole.IsEmpty ? [.. gears] : [.. gears, new TestedCase(group, "every gear", whole)];
    }

    /// <summary>A case for each gear of each matched set, and one for each expectation.</summary>
    /// <param name="file">What a check came to.</param>
    public static ImmutableArray<TestedCase> Of(CheckedFile file) =>
        [.. file.Matched.SelectMany(report => Of(report)), .. file.Expectations.Select(Of)];

    /// <summary>A case for each assembly and gear that a finding names.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="findings">The findings.</param>
    public static ImmutableArray<TestedCase> Of(Unit unit, IEnumerable<Finding> findings) =>
    [
        .. findings.Where(finding => !finding.Assembly.IsEmpty)
            .GroupBy(finding => (Group: NameOf(unit, finding.Assembly), Name: finding.Gear is { } gear ? $"gear {gear}" : "every gear"))
            .Select(group => new TestedCase(group.Key.Group, group.Key.Name, [.. group])),
    ];

    /// <summary>What a finding's assembly is called: its matched set where it is one, else its parts, those of one revision left out.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="assembly">Part to revision.</param>
    public static string NameOf(Unit unit, ImmutableArray<KeyValuePair<string, string>> assembly)
    {
        if (unit.Matched.FirstOrDefault(set => assembly.All(pair => set.Revisions.Contains(pair))) is { } matched) return matched.Name;
        var named = assembly.Where(pair => unit.FindPart(pair.Key) is not { Revisions.Length: 1 }).Select(pair => $"{pair.Key}={pair.Value}");
        return string.Join(", ", named);
    }

    private static TestedCase Of(CheckedExpectation checkedOne)
    {
        var expectation = checkedOne.Expectation;
        var where = expectation.Gear is { } gear ? $"gear {gear.Name}" : "worst gear";
        return new TestedCase(
            "expect", $"{NameOf(checkedOne.Assembly.Unit, checkedOne.Assembly.Choice)}, {where}: {Words.Of(expectation.Verdict)}", checkedOne.Missed)
        {
            Outcome = checkedOne.Missed.IsEmpty ? "held" : "not met",
        };
    }
}
