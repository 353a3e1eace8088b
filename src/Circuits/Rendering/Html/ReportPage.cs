using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Rendering.Plots;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering.Html;

/// <summary>What a report is made of.</summary>
/// <param name="Sheet">The job sheet.</param>
/// <param name="Views">Every gear, ready to be drawn.</param>
/// <param name="Shifts">The shifts, or null where the file has none to time.</param>
/// <param name="Air">The air check, or null where there is nothing to let air into.</param>
/// <param name="Command">The command line, as it may be typed again.</param>
/// <param name="Version">The program's version.</param>
public sealed record ReportContent(JobSheet Sheet, AssemblyViews Views, ShiftReport? Shifts, AirReport? Air, string Command, string Version);

/// <summary>The report to hand over: a page in one file, verdict first.</summary>
public static class ReportPage
{
    private const int MostConnections = 6;

    /// <summary>The page.</summary>
    /// <param name="content">What it is made of.</param>
    /// <param name="units">The units.</param>
    public static string Of(ReportContent content, UnitSystem units)
    {
        var found = content.Sheet.Found;
        var unit = found.Assembly.Unit;
        var sheet = JobSheetContent.Of(content.Sheet, units);
        var page = new HtmlPage($"Report on {unit.Name}");
        page.Raw("<a class=\"skip screen\" href=\"#main\">To the report</a>\n<main id=\"main\">\n");
        page.Text("h1", $"{unit.Name}: report").Text("p", $"data: {Words.Of(unit.Data)}. {Words.Of(found.Assembly)}.");
        Verdict(page, found);
        Head(page, sheet);
        Section(page, sheet, SheetPart.Complaint, units);
        page.Raw("<section aria-labelledby=\"gears\">\n").Text("h2", "Gears", "id=\"gears\"");
        Chart(page, found);
        page.Raw("</section>\n");
        Section(page, sheet, SheetPart.Cause, units);
        Section(page, sheet, SheetPart.Evidence, units, tables: false);
        if (!content.Views.Gears.IsEmpty)
        {
            page.Raw("<section aria-labelledby=\"drawings\">\n").Text("h2", "The circuit, gear by gear", "id=\"drawings\"");
            GearPicker.Write(page, content.Views, units);
            page.Raw("</section>\n");
        }

        if (content.Shifts is { Shifts.IsEmpty: false } shifts) Shifts(page, shifts, units);
        Section(page, sheet, SheetPart.Correction, units);
        page.Raw("<section aria-labelledby=\"checks\">\n").Text("h2", "Checks to make", "id=\"checks\"");
        Checks(page, content, sheet, units);
        page.Raw("</section>\n");
        foreach (var part in new[] { SheetPart.Parts, SheetPart.Notes }) Section(page, sheet, part, units);
        var assumptions = found.Assumptions.Select(assumption => assumption.Text).Concat(content.Shifts?.Assumptions ?? []).Distinct().ToList();
        if (assumptions.Count > 0) page.Text("h2", "Assumptions").List(assumptions.Select(text => PhraseWords.Of(text, units)));
        Section(page, sheet, SheetPart.Cautions, units);
        page.Text("h2", "Files and command");
        page.Raw("<dl>\n");
        foreach (var file in content.Sheet.Given.Files) page.Text("dt", file.File).Text("dd", $"revision {file.Fingerprint} (SHA-256 of its content)");
        page.Text("dt", "made by").Raw("<dd><code>").Raw(Markup.Text(content.Command)).Raw("</code></dd>\n").Text("dt", "program").Text("dd", content.Version);
        page.Raw("</dl>\n</main>\n<script>\n").Raw(HtmlPage.Resource("page.js")).Raw("</script>\n");
        return page.ToString();
    }

    private static void Verdict(HtmlPage page, AssemblyReport found)
    {
        var errors = found.Findings.Count(finding => finding.Severity == Severity.Error);
        var style = found.Verdict != Model.Verdict.AsCharted ? "bad" : errors > 0 ? "doubt" : "good";
        page.Raw($"<div class=\"verdict\"><p class=\"{style}\">").Raw(Markup.Text($"Verdict: {GearsText.Summary(found)}")).Raw("</p>\n");
        page.Text("p", found.Assembly.Matched is { } set ? $"This is the matched set {set}."
            : found.NearestMatched.IsEmpty ? "The file declares no matched set."
            : $"No matched set; nearest: {string.Join(", ", found.NearestMatched)}.");
        page.Raw("</div>\n");
    }

    private static void Head(HtmlPage page, SheetContent sheet)
    {
        var own = sheet.Head.Where(pair => pair.Key is not ("unit" or "verdict" or "file")).ToList();
        if (own.Count == 0) return;
        page.Raw("<dl>\n");
        foreach (var (name, value) in own) page.Text("dt", name).Text("dd", value);
        page.Raw("</dl>\n");
    }

    private static void Section(HtmlPage page, SheetContent sheet, SheetPart part, UnitSystem units, bool tables = true)
    {
        foreach (var section in sheet.Sections.Where(section => section.Part == part))
        {
            if (section.Lines.IsEmpty && (!tables || section.Table is null)) continue;
            page.Text("h2", section.Title);
            Lines(page, section, units);
            if (tables && section.Table is { } table) Table(page, table, units);
        }
    }

    private static void Lines(HtmlPage page, SheetSection section, UnitSystem units)
    {
        if (section.Lines.IsEmpty) return;
        page.Raw("<ul>\n");
        for (var i = 0; i < section.Lines.Length;)
        {
            page.Raw("<li>").Raw(Markup.Text(section.Lines[i++].Text));
            var below = section.Lines.Skip(i).TakeWhile(line => line.Depth > 0).ToList();
            page.List(below.Select(line => line.Text)).Raw("</li>\n");
            i += below.Count;
        }

        page.Raw("</ul>\n");
    }

    private static void Table(HtmlPage page, SheetTable table, UnitSystem units)
    {
        page.Raw("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Table\"><table><thead><tr>");
        foreach (var head in table.Heads) page.Text("th", head, "scope=\"col\"");
        page.Raw("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            page.Raw("<tr>");
            for (var i = 0; i < row.Length; i++) page.Text(i == 0 ? "th" : "td", row[i], i == 0 ? "scope=\"row\"" : "");
            page.Raw("</tr>\n");
        }

        page.Raw("</tbody></table></div>\n");
    }

    private static void Chart(HtmlPage page, AssemblyReport found)
    {
        if (found.Gears.IsEmpty)
        {
            page.Text("p", "The file has no gears.");
            return;
        }

        page.Raw("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Every gear\"><table><thead><tr><th scope=\"col\">gear</th>");
        foreach (var clutch in found.Gears[0].Clutches) page.Text("th", clutch.Clutch, "scope=\"col\"");
        page.Raw("<th scope=\"col\">verdict</th><th scope=\"col\">ratio</th><th scope=\"col\">the driver feels</th></tr></thead>\n<tbody>\n");
        foreach (var gear in found.Gears)
        {
            page.Raw("<tr>").Text("th", gear.Gear + (gear.DependsOnHistory ? " (depends on the gear before)" : ""), "scope=\"row\"");
            foreach (var clutch in gear.Clutches)
            {
                var mark = ClutchMark.Of(gear, clutch);
                page.Text("td", mark.Text switch { "X" => "on", "." => "–", _ => mark.Meaning }, mark.Text is "X" or "." ? "" : "class=\"bad\"");
            }

            page.Text("td", Words.Of(gear.Verdict), gear.Verdict == Model.Verdict.AsCharted ? "" : "class=\"bad\"").Text("td", GearChart.Ratio(gear.Drive?.Ratio)).Text("td", gear.Drive is { } drive ? FeelWords.Of(drive.Feel) : "–").Raw("</tr>\n");
        }

        page.Raw("</tbody></table></div>\n<p class=\"faint\">– off, as charted</p>\n");
    }

    private static void Shifts(HtmlPage page, ShiftReport shifts, UnitSystem units)
    {
        page.Raw("<section aria-labelledby=\"shifts\">\n").Text("h2", "Shifts over time", "id=\"shifts\"");
        page.Text("p", FormattableString.Invariant(
            $"Oil at {Measures.Temperature(shifts.Conditions.Celsius, units)}, pump at {shifts.Conditions.StandingSpeed:0} rpm while a gear is engaged and {shifts.Conditions.DrivingSpeed:0} rpm in shifts. Times in ms since the shift began."));
        var rows = shifts.Shifts.Select(pair => (ImmutableArray<string>)
        [
            pair.Here.Plan.Name, VerdictText.Of(pair.Here.Verdict) + (pair.Here.Reason.IsEmpty ? "" : $": {PhraseWords.Of(pair.Here.Reason, units)}"), Ms(pair.Here.LetsGoMs), Ms(pair.Here.HoldsMs),
            Ms(pair.Beside?.HoldsMs), Ms(pair.Here.FlareMs > 0.5 ? pair.Here.FlareMs : null), Ms(pair.Here.TieUpMs > 0.5 ? pair.Here.TieUpMs : null),
        ]);
        Table(page, new SheetTable(["shift", "verdict", "lets go", "holds", $"holds in {shifts.Beside?.Matched ?? "another set"}", "flare", "tie-up"], [.. rows]), units);
        for (var i = 0; i < shifts.Shifts.Length; i++)
        {
            var pair = shifts.Shifts[i];
            if (pair.Here.Samples.IsEmpty) continue;
            var plot = new Plot([ShiftPlot.Sheet(shifts.Assembly, pair.Here, pair.Beside, shifts.Beside?.Matched ?? "beside", units)]);
            page.Text("h3", $"Shift {pair.Here.Plan.Name}");
            page.Raw("<figure class=\"plot\">\n").Raw(plot.Element(string.Create(CultureInfo.InvariantCulture, $"shift-{i}"))).Raw("</figure>\n");
        }

        page.Raw("</section>\n");
    }

    private static void Checks(HtmlPage page, ReportContent content, SheetContent sheet, UnitSystem units)
    {
        if (content.Air is { } air && !air.Connections.IsEmpty)
        {
            page.Text("h3", "With air, before the unit goes in").Raw("<ol>\n");
            foreach (var connection in air.Connections.Take(MostConnections))
            {
                var moving = content.Sheet.Found.Assembly.Unit.Clutches.Where(clutch => connection.Right.MoveOf(clutch.Name) == AirMove.Moves).Select(clutch => clutch.Name).ToList();
                page.Raw("<li>").Raw(Markup.Text($"{AirCheckText.Of(connection.Port)} ({AirCheckText.Setting(connection.Port)}): "
                    + (!connection.Right.Settled ? "what moves cannot be said" : moving.Count == 0 ? "nothing moves" : $"{string.Join(", ", moving)} must move"))).Raw("</li>\n");
            }

            page.Raw("</ol>\n").Text("p", "What else may happen there, and what air cannot show: circuits air-check.", "class=\"faint\"").List(Cautions.ForAir);
        }

        foreach (var section in sheet.Sections.Where(section => section.Part == SheetPart.Expected))
        {
            page.Text("h3", section.Title);
            Lines(page, section, units);
            if (section.Table is { } table) Table(page, table, units);
        }

        page.Text("p", "Then the road test, once nothing above contradicts this report; not with a predicted tie-up, wrong direction or loss of reverse.");
    }

    private static string Ms(double? value) => value is { } ms ? ms.ToString("0", CultureInfo.InvariantCulture) : "–";
}
