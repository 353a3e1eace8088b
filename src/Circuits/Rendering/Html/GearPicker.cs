using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Html;

/// <summary>
/// The drawing of every gear, one shown at a time. The choice is made by radio buttons and a style rule for each, so it needs no script; a
/// reader that does not know the rule, and paper, show all of them.
/// </summary>
internal static class GearPicker
{
    // What A4 and Letter both hold within the page's margins of 12 mm, less a caption: millimetres.
    private const double PrintWidth = 185;
    private const double PrintHeight = 240;

    public static void Write(HtmlPage page, AssemblyViews views, UnitSystem units)
    {
        var drawing = CircuitDrawing.Of(views.Gears, units);
        var first = Math.Max(0, views.Gears.Select((view, i) => (view, i)).Where(pair => pair.view.Report.Verdict != Verdict.AsCharted).Select(pair => pair.i).FirstOrDefault(0));
        page.Raw("<div class=\"picker\">\n<style>\n");
        for (var i = 0; i < views.Gears.Length; i++)
            page.Raw(string.Create(CultureInfo.InvariantCulture, $"@media screen {{ .picker:has(#pick-{i}:checked) .gear:not(#gear-{i}) {{ display: none; }} }}\n"));
        page.Raw("</style>\n<fieldset class=\"screen\"><legend>Gear</legend>\n");
        for (var i = 0; i < views.Gears.Length; i++)
        {
            page.Raw(string.Create(CultureInfo.InvariantCulture, $"<label><input type=\"radio\" name=\"gear\" id=\"pick-{i}\"{(i == first ? " checked" : "")}> "));
            page.Raw(Markup.Text(views.Gears[i].Gear));
            if (views.Gears[i].Report.Verdict != Verdict.AsCharted) page.Raw($" <span class=\"bad\">{Markup.Text(Words.Of(views.Gears[i].Report.Verdict))}</span>");
            page.Raw("</label>\n");
        }

        page.Raw("<label id=\"large-choice\" hidden><input type=\"checkbox\" id=\"large\" checked> Print the chosen gear large, too, on several pages</label>\n");
        page.Raw("</fieldset>\n<p class=\"screen faint\" id=\"lit\" role=\"status\"></p>\n");
        for (var i = 0; i < views.Gears.Length; i++) Gear(page, drawing, views, i, units);
        page.Raw("</div>\n");
    }

    private static void Gear(HtmlPage page, CircuitDrawing drawing, AssemblyViews views, int number, UnitSystem units)
    {
        var view = views.Gears[number];
        var report = view.Report;
        page.Raw(string.Create(CultureInfo.InvariantCulture, $"<section class=\"gear\" id=\"gear-{number}\" aria-labelledby=\"gear-{number}-name\">\n"));
        page.Text("h3", $"Gear {view.Gear}: {Words.Of(report.Verdict)}", string.Create(CultureInfo.InvariantCulture, $"id=\"gear-{number}-name\""));
        if (report.Drive is { } drive) page.Text("p", $"The driver feels: {FeelWords.Of(drive.Feel)}.");
        var on = report.Clutches.Where(clutch => clutch.State is ClutchState.Applied or ClutchState.Weak).Select(clutch => clutch.Clutch).ToList();
        page.Text("p", $"On: {(on.Count == 0 ? "no clutch" : string.Join(", ", on))}.");
        var wrong = report.Clutches.Where(clutch => clutch.Verdict != Verdict.AsCharted).Select(clutch =>
            $"{clutch.Clutch}: {Words.Of(clutch.Verdict)}" + (clutch.StoppedAt is { } stop ? $"; its oil stops at {stop.Element} ({PhraseWords.Of(stop.Reason, units)})" : ""));
        page.List(wrong.Concat(report.CrossFeeds.Select(feed => $"oil of {feed.From} enters {feed.Into} through {feed.Through}")));
        using var text = new StringWriter { NewLine = "\n" };
        drawing.Write(text, view, string.Create(CultureInfo.InvariantCulture, $"g{number}-"));
        page.Raw($"<figure class=\"sheet\"{Parts(drawing, view)}><div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Drawing of gear {Markup.Text(view.Gear)}\">\n{text}</div></figure>\n");
        foreach (var clutch in report.Clutches) Reasons(page, views.Trace(number, clutch.Clutch), clutch, units);
        Pressures(page, report, units);
        page.Raw("</section>\n");
    }

    /// <summary>
    /// Where the drawing is cut for print, on A4 and on Letter alike, so that its lettering can be read: for each page left, top, width and height,
    /// and how many millimetres a unit takes. Empty where one page holds it.
    /// </summary>
    private static string Parts(CircuitDrawing drawing, GearView view)
    {
        var (width, height) = drawing.Size(view);
        var scale = CircuitPages.LargestScale(Divide);
        var paging = Divide(scale);
        if (paging.Count == 1) return "";
        var parts = Enumerable.Range(0, paging.Count).Select(paging.Corner).Select(corner => FormattableString.Invariant($"{corner.X / scale:0.#} {corner.Y / scale:0.#} {Math.Min(paging.RoomX / scale, width - (corner.X / scale)):0.#} {Math.Min(paging.RoomY / scale, height - (corner.Y / scale)):0.#}"));
        return FormattableString.Invariant($" data-parts=\"{string.Join(';', parts)}\" data-scale=\"{scale:0.#####}\" data-columns=\"{paging.Columns}\"");

        Paging Divide(double each) => CircuitPages.Divide(drawing, view, each, PrintWidth, PrintHeight);
    }

    /// <summary>Why a clutch has, or lacks, pressure; open where it is not as charted, so that it is read, and printed, without asking.</summary>
    private static void Reasons(HtmlPage page, Trace trace, ClutchReport clutch, UnitSystem units)
    {
        page.Raw($"<details class=\"reasons\"{(clutch.Verdict == Verdict.AsCharted ? "" : " open")}>").Text("summary", $"Why {clutch.Clutch} is {Words.Of(clutch.State)}");
        foreach (var (heading, fact) in new[] { ("From supply", trace.Apply), ("To sump", trace.Release) })
        {
            page.Text("p", heading, "class=\"faint\"").Raw("<ul>\n");
            Fact(page, fact, units);
            page.Raw("</ul>\n");
        }

        page.Raw("</details>\n");
    }

    // As in the text: the oil's way reads downwards, and only what a step depends on goes a level deeper.
    private static void Fact(HtmlPage page, TraceFact fact, UnitSystem units)
    {
        for (var step = fact; ; step = step.Because[^1])
        {
            page.Raw("<li>").Raw(Markup.Text(PhraseWords.Of(step.Fact, units)));
            if (step.Place is { File.Length: > 0 } place) page.Raw(" <span class=\"faint\">").Raw(Markup.Text($"[{place}]")).Raw("</span>");
            var below = step.IsStep ? step.Because[..^1] : step.Because;
            if (!below.IsEmpty)
            {
                page.Raw("<ul>\n");
                foreach (var reason in below) Fact(page, reason, units);
                page.Raw("</ul>");
            }

            page.Raw("</li>\n");
            if (!step.IsStep) return;
        }
    }

    // What the drawing shows by colour, to be read and searched.
    private static void Pressures(HtmlPage page, GearReport report, UnitSystem units)
    {
        var rows = report.Pressures.Select(pressure => (pressure.Passage, Measures.PressureNumber(pressure.Kilopascals, units))).ToImmutableArray();
        if (rows.IsEmpty) return;
        page.Raw("<details><summary>Pressure of every passage</summary>\n<table><thead><tr><th scope=\"col\">passage</th><th scope=\"col\">").Raw(Measures.PressureUnit(units)).Raw("</th></tr></thead><tbody>\n");
        foreach (var (passage, pressure) in rows) page.Raw("<tr>").Text("th", passage, "scope=\"row\"").Text("td", pressure).Raw("</tr>\n");
        page.Raw("</tbody></table></details>\n");
    }
}
