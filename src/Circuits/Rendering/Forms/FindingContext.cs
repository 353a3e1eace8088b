using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>Says what a finding was found in.</summary>
internal static class FindingContext
{
    /// <summary>The assembly and the gear, <c>late, gear R</c>; empty for what belongs to the file alone.</summary>
    public static string Of(Unit? unit, Finding finding)
    {
        var words = new List<string>();
        if (!finding.Assembly.IsEmpty && unit is not null) words.Add(TestedCases.NameOf(unit, finding.Assembly));
        if (finding.Gear is { } gear) words.Add($"gear {gear}");
        return string.Join(", ", words);
    }

    /// <summary>The assembly and the gear, <c>late, gear R</c>; empty for what belongs to the file alone.</summary>
    public static string Of(FindingReport report, Finding finding) => Of(report.Unit, finding);
}
