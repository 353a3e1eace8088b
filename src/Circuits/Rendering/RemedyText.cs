using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Remedies;

namespace Circuits.Rendering;

/// <summary>What would make an assembly right, as a page.</summary>
public static class RemedyText
{
    private const int MostOffers = 20;

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="atHand">What is at hand, in words; null for every revision.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(RemedyReport report, string? atHand, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, report.Before.Assembly, report.Before.NearestMatched);
        GearsText.JudgedBy(page, report.Before.Mode, report.Before.Points);
        page.Item("verdict ", GearsText.Summary(report.Before), indent: 0);
        if (report.Before.Verdict == Model.Verdict.AsCharted)
        {
            foreach (var error in report.Before.Findings.Where(finding => finding.Severity == Findings.Severity.Error))
                page.Item("error   ", 0, Page.Bad, ($"{error.Rule}: {page.Words(error.Message)}", Page.Plain));
        }

        if (report.IsRight)
        {
            page.Blank();
            page.Line("Every gear is right, and nothing is found of error level: there is nothing to mend.");
        }
        else
        {
            Parts(page, report, atHand);
            Bench(page, report);
        }

        PageEnding.Cautions(page, CautionsFor(report));
        return page.ToString();
    }

    /// <summary>What someone who acts on this must be told. Common practice of the trade, no source.</summary>
    internal static IEnumerable<string> CautionsFor(RemedyReport report)
    {
        if (report.Bench.Any(remedy => !remedy.CanBeUndone)) yield return "A drilled hole stays. Try what can be undone first, and drill in small steps.";
        yield return Cautions.WhoDecides;
    }

    private static void Parts(Page page, RemedyReport report, string? atHand)
    {
        var extent = report.PartSearch;
        page.Heading(extent.Fewest is { } fewest ? $"Other parts: {Words.Count(fewest, "part")} must change" : "Other parts");
        var at = atHand is null ? "" : $" At hand: {atHand}.";
        var looked = extent.Complete
            ? $"Solved {Words.Count(extent.Tried, "assembly", "assemblies")}: every choice of up to {Words.Count(extent.Depth, "part")}."
            : $"Solved {Words.Count(extent.Tried, "assembly", "assemblies")}, then stopped: not every choice of {Words.Count(extent.Depth, "part")} was tried.";
        if (report.Parts.IsEmpty) page.Line($"Nothing found. {looked}{at}", indent: 2);
        for (var i = 0; i < report.Parts.Length; i++) Offer(page, i + 1, report.Parts[i], report.Parts[i].After.Assembly.Matched is { } set ? $"then matched: {set}" : null);
        if (!report.Parts.IsEmpty) page.Line(looked + at, Page.Faint, indent: 2);
    }

    private static void Bench(Page page, RemedyReport report)
    {
        page.Heading("Without other parts");
        var extent = report.BenchSearch;
        var pairs = extent.PossiblePairs == 0 ? "Two at once were not called for."
            : extent.Pairs < extent.PossiblePairs ? $"Two at once: {extent.Pairs} of {extent.PossiblePairs} pairs tried, the likeliest first."
            : $"Two at once: all {extent.Pairs} pairs tried.";
        var looked = $"Solved alone: {Words.Count(extent.Balls, "ball")} (left out, put in or exchanged), {Words.Count(extent.Plugs, "plug")}, {Words.Count(extent.Holes, "hole")} (locations and sizes). {pairs}";
        if (report.Bench.IsEmpty) page.Line($"Nothing found. {looked}", indent: 2);
        for (var i = 0; i < Math.Min(MostOffers, report.Bench.Length); i++)
        {
            var remedy = report.Bench[i];
            var asIn = remedy.AsIn.IsEmpty ? "" : $", as {string.Join(" and ", remedy.AsIn)} {(remedy.AsIn.Length == 1 ? "has" : "have")} it";
            Offer(page, i + 1, remedy, $"{(remedy.CanBeUndone ? "can be undone" : "cannot be undone")}{asIn}");
        }

        if (report.Bench.Length > MostOffers) page.Line($"{report.Bench.Length - MostOffers} more like these: see --format json.", indent: 2);
        if (!report.Bench.IsEmpty) page.Line(looked, Page.Faint, indent: 2);
    }

    private static void Offer(Page page, int number, Remedy remedy, string? note)
    {
        page.Item($"{number}.", 2, Page.Strong, (string.Join("; ", remedy.Changes.Select(change => page.Words(change.Text))), Page.Strong));
        if (note is not null) page.Line(note, remedy.CanBeUndone ? Page.Plain : Page.Doubtful, indent: 5);
        if (remedy.Sizes.Length > 1) page.Item("sizes that do:", Sizes(page, remedy.Sizes), indent: 5);
        foreach (var feel in remedy.Feels) page.Item("the driver feels:", FeelWords.Of(feel), indent: 5);
        foreach (var left in remedy.Leaves.DistinctBy(finding => (finding.Rule, finding.Message))) page.Item($"leaves {left.Rule}:", page.Words(left.Message), indent: 5);
    }

    /// <summary>A few sizes as a list; many as the smallest and the largest.</summary>
    private static string Sizes(Page page, ImmutableArray<Shape.Hole> sizes)
    {
        return sizes.Length <= 6 ? string.Join(", ", sizes.Select(Size)) : $"{Size(sizes[0])} to {Size(sizes[^1])}, {sizes.Length} sizes tried that do";

        // A drill goes by its number; any other size as the file writes it, or in the units asked for.
        string Size(Shape.Hole hole) => page.Options.Units == UnitSystem.Si || NumberDrill.IsOne(hole.Diameter) ? hole.Text : Measures.Of(hole.Diameter.Quantity, page.Options.Units);
    }
}
