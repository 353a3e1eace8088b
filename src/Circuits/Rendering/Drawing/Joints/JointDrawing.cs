using System.Globalization;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>
/// A joint as SVG, in millimetres at 1:1: the sheets laid over the passages of both castings. With a second assembly laid over it, what
/// is added and what is removed has a colour and a pattern of its own.
/// </summary>
public sealed class JointDrawing
{
    private const double Margin = 8;
    private const double LeastWidth = 150;
    private readonly JointLook look;
    private readonly UnitSystem units;
    private readonly JointPlan plan;

    /// <summary>Lays a joint out.</summary>
    /// <param name="look">The joint.</param>
    /// <param name="units">The units of the sizes that it names; it is drawn in millimetres.</param>
    public JointDrawing(JointLook look, UnitSystem units = UnitSystem.Si)
    {
        this.look = look;
        this.units = units;
        plan = new JointPlan(look, units);
    }

    internal JointPlan Plan => plan;

    /// <summary>The joint's name, and whether its drawing rests on coordinates.</summary>
    internal string Title =>
        $"{look.Assembly.Unit.Name}, joint {look.Joint.Name}: {look.Joint.Upper.Name}, {string.Concat(look.Joint.Sheets.Select(sheet => sheet.Name + ", "))}{look.Joint.Lower.Name}";

    /// <summary>What to know before the drawing is trusted, a row each.</summary>
    internal IEnumerable<(string Text, string? Style)> Notes()
    {
        yield return ($"{DrawnText.Short(look.Assembly.Unit.Name, 40)}, joint {DrawnText.Short(look.Joint.Name, 24)}", "head");
        yield return ($"{DrawnText.Short(look.Joint.Upper.Name, 20)} above; {string.Join(", ", look.Joint.Sheets.Select(sheet => DrawnText.Short(sheet.Name, 20)).DefaultIfEmpty("no sheet"))} between; {DrawnText.Short(look.Joint.Lower.Name, 20)} below", null);
        yield return ($"Parts: {Parts(look.Assembly)}", null);
        if (look.Over is { } over) yield return ($"Laid over it: {Parts(over)}", null);
        yield return ($"Data: {Words.Of(look.Assembly.Unit.Data)}. Tracks join the places where a passage opens; the file does not tell how they run.", null);
        var missing = look.Locations.Count(location => !location.IsMeasured);
        if (missing == look.Locations.Length && missing > 0) yield return ("The file gives no coordinates: locations stand in a grid, not where they lie.", "alarm");
        else if (missing > 0) yield return ($"{Words.Count(missing, "location")} without coordinates, in the grid below the others.", "alarm");
        if (look.Locations.IsEmpty) yield return ("Nothing opens on this joint.", "alarm");
    }

    /// <summary>Writes one sheet with everything: plan, scale bar, legend, and what stands at each location.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="prefix">What every id begins with, so that several drawings can stand in one page.</param>
    public void Write(TextWriter to, string prefix = "j-")
    {
        var svg = new SvgWriter(to);
        var notes = Notes().ToList();
        var rows = JointTable.Rows(look, units).ToList();
        var width = Math.Ceiling(new[]
        {
            LeastWidth, plan.Extent.Width, notes.Max(note => DrawnText.Width(note.Text, note.Style == "head" ? 5 : JointStyle.Type, note.Style is not null)),
            rows.Select(row => DrawnText.Width(row.Text, JointStyle.Type, bold: true)).DefaultIfEmpty().Max(),
        }.Max() + (2 * Margin));
        var planTop = Margin + 3 + (notes.Count * (JointStyle.Row + 0.6));
        var bar = planTop + plan.Extent.Height + 6;
        var legend = bar + 12;
        var table = legend + JointLegend.HeightOf(look, width - (2 * Margin)) + 6;
        var column = rows.Select(row => DrawnText.Width(row.Text, JointStyle.Type, bold: true)).DefaultIfEmpty().Max() + 6;
        var columns = Math.Max(1, (int)((width - (2 * Margin) + 6) / column));
        var deep = (rows.Count + columns - 1) / columns;
        var height = Math.Ceiling(table + (deep * JointStyle.Row) + Margin);
        Begin(svg, width, height, prefix, null);
        for (var i = 0; i < notes.Count; i++) svg.Text(Margin, Margin + 3 + (i * (JointStyle.Row + 0.6)), notes[i].Text, notes[i].Style);
        svg.Begin("g", ("class", "plan"), ("transform", SvgWriter.Path($"translate({Margin - plan.Extent.Left:0.##} {planTop - plan.Extent.Top:0.##})")));
        plan.Draw(svg, prefix);
        svg.End();
        Bar(svg, Margin, bar);
        JointLegend.Write(svg, look, prefix, Margin, legend, width - (2 * Margin));
        for (var i = 0; i < rows.Count; i++)
            svg.Text(Margin + (i / deep * column), table + (((i % deep) + 1) * JointStyle.Row) - 1, rows[i].Text, rows[i].Style);
        svg.End();
    }

    /// <summary>Begins a drawing of a size in millimetres, with what all drawings of joints have.</summary>
    internal void Begin(SvgWriter svg, double width, double height, string prefix, string? page)
    {
        svg.Begin(
            "svg", ("xmlns", "http://www.w3.org/2000/svg"), ("class", "oil-joint"), ("viewBox", SvgWriter.Path($"0 0 {width:0.##} {height:0.##}")), ("width", $"{Markup.Number(width)}mm"),
            ("height", $"{Markup.Number(height)}mm"), ("role", "img"), ("aria-labelledby", $"{prefix}title {prefix}desc"), ("data-joint", look.Joint.Name));
        svg.Leaf("title", Title + page, ("id", $"{prefix}title"));
        svg.Leaf("desc", string.Join(". ", Notes().Skip(1).Select(note => note.Text.TrimEnd('.')).Concat(JointTable.Rows(look, units).Select(row => row.Text))), ("id", $"{prefix}desc"));
        svg.Raw("style", JointStyle.Sheet + (page is null ? "" : SvgWriter.Path($"@page{{size:{width:0.##}mm {height:0.##}mm;margin:0}}\n")));
        svg.Begin("defs");
        svg.Begin("pattern", ("id", $"{prefix}added"), ("width", "1.2"), ("height", "1.2"), ("patternUnits", "userSpaceOnUse"), ("patternTransform", "rotate(45)"));
        svg.Box(0, 0, 1.2, 1.2, fill: "#FFFFFF");
        svg.Box(0, 0, 0.5, 1.2, fill: "#7FB3E6");
        svg.End();
        svg.End();
        svg.Box(0, 0, width, height, fill: "#FFFFFF");
    }

    /// <summary>A bar of 50 mm, to hold a ruler to.</summary>
    internal static void Bar(SvgWriter svg, double x, double y)
    {
        svg.Begin("g", ("class", "scale"), ("data-mm", JointStyle.Bar.ToString("0", CultureInfo.InvariantCulture)));
        svg.Box(x, y, JointStyle.Bar, 1.2, "bar");
        for (var i = 0; i <= 5; i++) svg.Line($"M{x + (i * 10):0.##} {y:0.##}v-1.5", "thin");
        svg.Text(x, y + 5, "50 mm at 1:1: hold a ruler to the bar before you trust the print");
        svg.End();
    }

    private static string Parts(Model.Assembly assembly) => string.Join(", ", assembly.Choice.Take(12).Select(pair => $"{DrawnText.Short(pair.Key, 16)} {DrawnText.Short(pair.Value, 10)}"));
}
