using Circuits.Rendering.Drawing.Paper;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>A joint on paper at 1:1, for the real plate to be laid on; over several pages where one does not hold it.</summary>
public sealed class JointPages
{
    private readonly JointDrawing drawing;
    private readonly PaperSheet sheet;

    /// <summary>Divides a drawing into pages, upright or across, whichever takes fewer.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="paper">The paper.</param>
    public JointPages(JointDrawing drawing, PaperSize paper)
    {
        this.drawing = drawing;
        sheet = PaperSheet.Of(paper, (across, down) => Paging.Of(across, down, drawing.Plan.Extent.Width, drawing.Plan.Extent.Height));
    }

    /// <summary>How many pages there are.</summary>
    public int Count => sheet.Paging.Count;

    /// <summary>Writes a page.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="page">Its number, from 0.</param>
    /// <param name="prefix">What every id begins with.</param>
    public void Write(TextWriter to, int page, string prefix = "j-")
    {
        var svg = new SvgWriter(to);
        var number = sheet.Number(page);
        drawing.Begin(svg, sheet.Width, sheet.Height, prefix, $", 1:1{number}");
        sheet.Part(svg, page, prefix, () =>
        {
            svg.Begin("g", ("class", "plan"), ("transform", SvgWriter.Path($"translate({-drawing.Plan.Extent.Left:0.##} {-drawing.Plan.Extent.Top:0.##})")));
            drawing.Plan.Draw(svg, prefix);
            svg.End();
        });
        JointDrawing.Bar(svg, PaperSheet.Margin, sheet.Foot);
        svg.Text(PaperSheet.Margin, sheet.Foot + 9, DrawnText.Short($"{drawing.Title}{number}", 90));
        if (drawing.Notes().FirstOrDefault(note => note.Style == "alarm") is { Text: { } text }) svg.Text(PaperSheet.Margin + 95, sheet.Foot + 5, text, "alarm");
        svg.End();
    }
}
