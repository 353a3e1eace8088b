using System.Globalization;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>A size of paper, in millimetres, upright.</summary>
/// <param name="Word">The word for it.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public readonly record struct PaperSize(string Word, double Width, double Height)
{
    /// <summary>ISO 216 A4.</summary>
    public static PaperSize A4 { get; } = new("a4", 210, 297);

    /// <summary>Letter, 8 1/2 by 11 inches.</summary>
    public static PaperSize Letter { get; } = new("letter", 215.9, 279.4);
}

/// <summary>
/// A joint on paper at 1:1, for the real plate to be laid on. What does not fit on one page goes over several, each of which
/// repeats 10 mm of its neighbour, with crosses to lay one on the other by.
/// </summary>
public sealed class JointPages
{
    private const double Margin = 10;
    private const double Foot = 16;
    private const double Shared = 10;
    private readonly JointDrawing drawing;
    private readonly double width;
    private readonly double height;
    private readonly int columns;
    private readonly int rows;

    /// <summary>Divides a drawing into pages, upright or across, whichever takes fewer.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="paper">The paper.</param>
    public JointPages(JointDrawing drawing, PaperSize paper)
    {
        this.drawing = drawing;
        var upright = Divide(paper.Width, paper.Height);
        var across = Divide(paper.Height, paper.Width);
        var turn = across.Columns * across.Rows < upright.Columns * upright.Rows;
        (width, height) = turn ? (paper.Height, paper.Width) : (paper.Width, paper.Height);
        (columns, rows) = turn ? across : upright;
    }

    /// <summary>How many pages there are.</summary>
    public int Count => columns * rows;

    /// <summary>Writes a page.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="page">Its number, from 0.</param>
    /// <param name="prefix">What every id begins with.</param>
    public void Write(TextWriter to, int page, string prefix = "j-")
    {
        var svg = new SvgWriter(to);
        var (column, row) = (page % columns, page / columns);
        var (roomX, roomY) = Room(width, height);
        var extent = drawing.Plan.Extent;
        var number = Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", page {page + 1} of {Count}");
        drawing.Begin(svg, width, height, prefix, $", 1:1{number}");
        svg.Begin("clipPath", ("id", $"{prefix}page"));
        svg.Box(Margin, Margin, roomX, roomY);
        svg.End();
        svg.Begin("g", ("clip-path", $"url(#{prefix}page)"));
        var (left, top) = (extent.Left + (column * (roomX - Shared)), extent.Top + (row * (roomY - Shared)));
        svg.Begin("g", ("class", "plan"), ("transform", SvgWriter.Path($"translate({Margin - left:0.##} {Margin - top:0.##})")));
        drawing.Plan.Draw(svg, prefix);
        for (var i = 1; i < columns; i++) Cross(svg, extent.Left + (i * (roomX - Shared)) + (Shared / 2), [extent.Top + 5, extent.Top + (Math.Min(extent.Height, rows * roomY) / 2), extent.Bottom - 5]);
        for (var i = 1; i < rows; i++) Cross(svg, [extent.Left + 5, (extent.Left + extent.Right) / 2, extent.Right - 5], extent.Top + (i * (roomY - Shared)) + (Shared / 2));
        svg.End();
        svg.End();
        var foot = height - Margin - Foot + 6;
        JointDrawing.Bar(svg, Margin, foot);
        svg.Text(Margin, foot + 9, DrawnText.Short($"{drawing.Title}{number}", 90));
        if (drawing.Notes().FirstOrDefault(note => note.Style == "alarm") is { Text: { } text }) svg.Text(Margin + 95, foot + 5, text, "alarm");
        svg.End();
    }

    private static (double X, double Y) Room(double width, double height) => (width - (2 * Margin), height - (2 * Margin) - Foot);

    private (int Columns, int Rows) Divide(double paperWidth, double paperHeight)
    {
        var (x, y) = Room(paperWidth, paperHeight);
        return (Pages(drawing.Plan.Extent.Width, x), Pages(drawing.Plan.Extent.Height, y));
    }

    private static int Pages(double length, double room) => length <= room ? 1 : (int)Math.Ceiling((length - Shared) / (room - Shared));

    private static void Cross(SvgWriter svg, double x, double[] ys)
    {
        foreach (var y in ys) svg.Line($"M{x - 4:0.##} {y:0.##}h8M{x:0.##} {y - 4:0.##}v8", "thin");
    }

    private static void Cross(SvgWriter svg, double[] xs, double y)
    {
        foreach (var x in xs) svg.Line($"M{x - 4:0.##} {y:0.##}h8M{x:0.##} {y - 4:0.##}v8", "thin");
    }
}
