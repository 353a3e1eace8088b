using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering.Matrix;
using Circuits.Rendering.Plots;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Html;

/// <summary>A matrix as a page in one file: the heat map, and a table of every group.</summary>
public static class MatrixPage
{
    /// <summary>The page.</summary>
    /// <param name="summary">The groups.</param>
    public static string Of(MatrixSummary summary)
    {
        var space = summary.Space;
        var unit = space.Unit;
        var page = new HtmlPage($"Matrix of {unit.Name}");
        page.Raw("<main>\n").Text("h1", $"Matrix of {unit.Name}")
            .Text("p", MatrixText.Verdicts(summary) + ".", "class=\"verdict\"")
            .Text("p", $"data: {Words.Of(unit.Data)}; {Words.Count(space.Count, "assembly", "assemblies")} in {Words.Count(summary.Groups.Count, "group")}; "
                + $"{Words.Count(summary.Networks, "distinct network")} solved.");
        page.Raw("<figure class=\"plot\"><div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Heat map\">\n").Raw(MatrixPlot.Of(summary).Element("matrix")).Raw("</div></figure>\n");
        page.Text("h2", "Every group, best first").Raw("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Groups\"><table>\n<thead><tr><th scope=\"col\">group</th><th scope=\"col\">assemblies</th>");
        foreach (var gear in space.Gears) page.Text("th", unit.Gears[gear].Name, "scope=\"col\"");
        page.Raw("<th scope=\"col\">the driver feels</th><th scope=\"col\">matched set</th><th scope=\"col\">revisions</th></tr></thead>\n<tbody>\n");
        foreach (var group in summary.BestFirst()) Row(page, summary, group);
        page.Raw("</tbody></table></div>\n").Text("h2", "Cautions").List([Cautions.WhoDecides]).Raw("</main>\n");
        return page.ToString();
    }

    private static void Row(HtmlPage page, MatrixSummary summary, MatrixGroup group)
    {
        var gears = group.Behaviour.Gears;
        page.Raw("<tr>").Text("th", group.Number.ToString(CultureInfo.InvariantCulture), "scope=\"row\"").Text("td", group.Count.ToString(CultureInfo.InvariantCulture));
        foreach (var gear in gears) page.Text("td", Words.Of(gear.Verdict), gear.Verdict == Verdict.AsCharted ? "" : "class=\"bad\"");
        page.Text("td", string.Join("; ", gears.Select(gear => gear.Feel).OfType<Feel>().Concat(group.Behaviour.Changes?.Select(change => change.Feel) ?? []).Where(feel => feel.Kind != FeelKind.AsItShould).Distinct().Select(feel => FeelWords.Of(feel))))
            .Text("td", string.Join(", ", group.Matched)).Raw("<td>").List(summary.BoxesOf(group).Select(box => MatrixText.Of(summary.Space, box))).Raw("</td></tr>\n");
    }
}
