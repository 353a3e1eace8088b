using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>What every page of computed numbers ends with.</summary>
internal static class PageEnding
{
    /// <summary>The findings, gear by gear.</summary>
    public static void Findings(Page page, IEnumerable<Finding> findings, Unit unit)
    {
        var all = findings.ToList();
        if (all.Count == 0) return;
        page.Heading("Findings");
        GearsText.FindingGroups(page, all.Select(finding => (finding.Gear, finding)), [.. unit.Gears.Select(gear => gear.Name)]);
    }

    /// <summary>What was assumed.</summary>
    public static void Assumptions(Page page, IReadOnlyCollection<Phrase> assumptions)
    {
        if (assumptions.Count == 0) return;
        page.Heading("Assumptions");
        foreach (var assumption in assumptions) page.Item("-", page.Words(assumption));
    }

    /// <summary>What whoever acts on it must be told.</summary>
    public static void Cautions(Page page, IEnumerable<string> cautions)
    {
        page.Heading("Cautions");
        foreach (var caution in cautions) page.Item("-", caution);
    }
}
