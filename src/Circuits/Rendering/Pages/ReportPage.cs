using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering.Pages;

/// <summary>
/// The page to hand over: one HTML file that opens from disk, asks nothing of any network, prints, and says all that it says without scripts.
/// </summary>
public static class ReportPage
{
    /// <summary>Nothing is fetched, from wherever the page stands; what is in it may style and run it.</summary>
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    /// <summary>A drawing of more passages and openings than this gets a page of its own on paper, on its side.</summary>
    private const int LargeNetwork = 40;

    private static readonly ImmutableArray<SheetPart> BeforeDrawings = [SheetPart.Complaint, SheetPart.Evidence, SheetPart.Cause];
    private static readonly ImmutableArray<SheetPart> AfterShifts =
        [SheetPart.Correction, SheetPart.Expected, SheetPart.Parts, SheetPart.Notes, SheetPart.Assumptions, SheetPart.Cautions];

    /// <summary>Writes the page.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="report">The report.</param>
    /// <param name="units">The units of text.</param>
    public static void Write(TextWriter to, PageReport report, UnitSystem units)
    {
        var html = new HtmlWriter(to, units);
        var content = JobSheetContent.Of(report.Sheet, units);
        var unit = report.Sheet.Found.Assembly.Unit;
        html.Raw("<!DOCTYPE html>");
        html.Begin("html", ("lang", "en"));
        Head(html, unit);
        html.Begin("body");
        html.Leaf("a", "To the verdict", ("class", "skip"), ("href", "#verdict"));
        html.Begin("header");
        html.Begin("h1");
        html.Leaf("bdi", unit.Name);
        html.End();
        html.Leaf("p", $"Report on one assembly of parts. Data: {Words.Of(unit.Data)}.", ("class", "soft"));
        html.End();
        html.Begin("main");
        Verdict(html, report);
        foreach (var part in BeforeDrawings) Section(html, content, part, report.Views.Report);
        Gears(html, report, units);
        if (report.Shifts is { } shifts) Shifts(html, shifts);
        foreach (var part in AfterShifts) Section(html, content, part, null);
        Made(html, report);
        html.End();
        html.Begin("script");
        html.Raw(PageAssets.Script);
        html.End();
        html.End();
        html.End();
    }

    private static void Head(HtmlWriter html, Unit unit)
    {
        html.Begin("head");
        html.Void("meta", ("charset", "utf-8"));
        html.Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", Policy));
        html.Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        html.Leaf("title", $"{unit.Name}: report");
        html.Begin("style");
        html.Raw(PageAssets.Style);
        html.End();
        html.End();
    }

    private static void Verdict(HtmlWriter html, PageReport report)
    {
        var found = report.Sheet.Found;
        html.Begin("section", ("id", "verdict"), ("aria-labelledby", "verdict-title"));
        html.Leaf("h2", "Verdict", ("id", "verdict-title"));
        html.Leaf("p", GearsText.Summary(found), ("class", report.Sheet.Remedy.IsRight ? "verdict good" : "verdict bad"));
        html.Begin("dl");
        if (report.Sheet.Given.Job is { } job) Pair(html, "Job", job);
        Pair(html, "Assembly", Words.Of(found.Assembly));
        foreach (var change in found.Assembly.Changes) Pair(html, "Changed", change);
        Pair(html, "Matched set", found.Assembly.Matched ?? (found.NearestMatched.IsEmpty ? "no; the file declares none" : $"no; nearest: {string.Join(", ", found.NearestMatched)}"));
        html.End();
        var first = Cautions.For(found, pressures: false).Where(caution => caution != Cautions.WhoDecides).ToList();
        foreach (var caution in first) html.Leaf("p", caution, ("class", "bad"));
        html.End();
    }

    private static void Section(HtmlWriter html, SheetContent content, SheetPart part, AssemblyReport? gears)
    {
        if (content.Sections.FirstOrDefault(section => section.Part == part) is not { } shown) return;
        var id = part.ToString().ToLowerInvariant();
        html.Begin("section", ("id", id), ("aria-labelledby", $"{id}-title"));
        html.Leaf("h2", shown.Title, ("id", $"{id}-title"));
        if (shown.Lines.Length > 0) Lines(html, shown.Lines);
        if (shown.Table is { } table) Table(html, table, shown.Title, part == SheetPart.Evidence ? gears : null);
        html.End();
    }

    private static void Lines(HtmlWriter html, ImmutableArray<SheetLine> lines)
    {
        html.Begin("ul");
        for (var i = 0; i < lines.Length; i++)
        {
            html.Begin("li");
            html.Text(lines[i].Text);
            var below = lines.Skip(i + 1).TakeWhile(line => line.Depth > lines[i].Depth).ToImmutableArray();
            if (below.Length > 0) Lines(html, [.. below.Select(line => line with { Depth = line.Depth - 1 })]);
            html.End();
            i += below.Length;
        }

        html.End();
    }

    private static void Table(HtmlWriter html, SheetTable table, string name, AssemblyReport? gears)
    {
        html.Begin("div", ("class", "wide"), ("role", "region"), ("aria-label", name), ("tabindex", "0"));
        html.Begin("table");
        html.Begin("thead");
        html.Begin("tr");
        foreach (var head in table.Heads) html.Leaf("th", head, ("scope", "col"));
        html.End();
        html.End();
        html.Begin("tbody");
        foreach (var row in table.Rows)
        {
            html.Begin("tr");
            html.Begin("th", ("scope", "row"));
            if (gears is not null && IndexOf(gears, row[0]) is >= 0 and var gear) html.Leaf("a", row[0], ("href", $"#{Id(gear)}"));
            else html.Text(row[0]);
            html.End();
            foreach (var cell in row.Skip(1)) html.Leaf("td", cell);
            html.End();
        }

        html.End();
        html.End();
        html.End();
    }

    private static void Gears(HtmlWriter html, PageReport report, UnitSystem units)
    {
        var views = report.Views.Gears;
        if (views.IsEmpty) return;
        html.Begin("section", ("id", "gears"), ("aria-labelledby", "gears-title"));
        html.Leaf("h2", "The circuit, gear by gear", ("id", "gears-title"));
        html.Leaf("p", "Choose a gear. Choose a passage in the drawing, by mouse or by Tab and Enter, to light up its circuit in every gear; Escape puts it out.", ("class", "soft"));
        var worst = Enumerable.Range(0, views.Length).MaxBy(i => views[i].Report.Verdict);
        html.Begin("nav", ("aria-label", "Gears"));
        html.Begin("ul", ("class", "picker"), ("data-first", Id(worst)));
        for (var i = 0; i < views.Length; i++)
        {
            html.Begin("li");
            html.Leaf("a", views[i].Gear, ("href", $"#{Id(i)}"));
            html.End();
        }

        html.End();
        html.End();
        html.Leaf("p", "", ("class", "status soft"), ("role", "status"));
        var drawing = CircuitDrawing.Of(views, units);
        for (var i = 0; i < views.Length; i++)
        {
            var view = views[i];
            var index = i;
            html.Begin("article", ("class", views[i].Solution.Network.Nodes.Length > LargeNetwork ? "gear large" : "gear"), ("id", Id(i)), ("aria-labelledby", $"{Id(i)}-title"));
            html.Leaf("h3", $"Gear {view.Gear}: {Words.Of(view.Report.Verdict)}{(view.Report.Drive is { } drive ? $"; the driver feels: {drive.Feels}" : "")}", ("id", $"{Id(i)}-title"));
            html.Begin("figure");
            html.Begin("div", ("class", "drawing"), ("role", "region"), ("aria-label", $"Drawing of gear {view.Gear}"), ("tabindex", "0"));
            html.Raw(to => drawing.Write(to, view, $"d{index.ToString(CultureInfo.InvariantCulture)}-"));
            html.End();
            html.Leaf("figcaption", $"The circuit in gear {view.Gear}: from the pump on the left to the clutches on the right.");
            html.End();
            html.End();
        }

        html.End();
    }

    private static void Shifts(HtmlWriter html, ShiftReport report)
    {
        if (report.Shifts.IsEmpty) return;
        html.Begin("section", ("id", "shifts"), ("aria-labelledby", "shifts-title"));
        html.Leaf("h2", "Shifts over time", ("id", "shifts-title"));
        html.Leaf("p", FormattableString.Invariant(
            $"Oil at {report.Conditions.Celsius:0.#} degC; pump at {report.Conditions.StandingSpeed:0} rpm while a gear is engaged, {report.Conditions.DrivingSpeed:0} rpm in shifts. Times in ms since the shift began."), ("class", "soft"));
        var rows = report.Shifts.Select(pair => (ImmutableArray<string>)
        [
            pair.Here.Plan.Name, ShiftsText.Words(pair.Here.Verdict), Touches(pair.Here), Ms(pair.Here.LetsGoMs), Ms(pair.Here.HoldsMs),
            pair.Here.FlareMs > 0 ? Ms(pair.Here.FlareMs) : "-", pair.Here.TieUpMs > 0 ? Ms(pair.Here.TieUpMs) : "-", pair.Here.Reason,
        ]);
        Table(html, new SheetTable(["shift", "verdict", "touches", "lets go", "holds", "flare", "tie-up", "why"], [.. rows]), "Shifts over time", null);
        html.End();

        static string Touches(TimedShiftReport shift) =>
            string.Join(", ", shift.Clutches.Where(clutch => clutch.Role == ClutchRole.OnComing).Select(clutch => $"{clutch.Clutch} {Ms(clutch.FillMs)}")) is { Length: > 0 } text ? text : "-";
        static string Ms(double? value) => value is { } ms ? ms.ToString("0", CultureInfo.InvariantCulture) : "-";
    }

    private static void Made(HtmlWriter html, PageReport report)
    {
        html.Begin("footer");
        html.Begin("section", ("id", "made"), ("aria-labelledby", "made-title"));
        html.Leaf("h2", "Where this comes from", ("id", "made-title"));
        html.Begin("dl");
        foreach (var file in report.Sheet.Given.Files) Pair(html, "File", $"{file.File}, SHA-256 {file.Fingerprint}");
        html.Leaf("dt", "Command");
        html.Begin("dd");
        html.Leaf("code", string.Join(" ", report.Command.Select(ShellWord.Of)));
        html.End();
        Pair(html, "Version", report.Version);
        html.End();
        html.End();
        html.End();
    }

    private static void Pair(HtmlWriter html, string name, string value)
    {
        html.Leaf("dt", name);
        html.Leaf("dd", value);
    }

    private static int IndexOf(AssemblyReport report, string gear)
    {
        for (var i = 0; i < report.Gears.Length; i++)
        {
            if (report.Gears[i].Gear == gear) return i;
        }

        return -1;
    }

    /// <summary>Gears may have any name; what links lead to has a number.</summary>
    private static string Id(int gear) => $"gear-{gear.ToString(CultureInfo.InvariantCulture)}";
}
