using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>A gear of a circuit on paper, as large as its lettering must be to be read; over several pages where one does not hold it.</summary>
public sealed class CircuitPages
{
    /// <summary>The least size of lettering, in points of 1/72 inch: that of footnotes, common practice, no source.</summary>
    public const double LeastType = 6;

    private const double MostType = 10;
    private const double FootType = 8;
    private const double Point = 25.4 / 72;
    private readonly CircuitDrawing drawing;
    private readonly GearView view;
    private readonly PaperSheet sheet;
    private readonly double scale;

    /// <summary>Divides the drawing of a gear into pages, upright or across, whichever takes fewer.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="view">One of the gears that it was placed for.</param>
    /// <param name="paper">The paper.</param>
    public CircuitPages(CircuitDrawing drawing, GearView view, PaperSize paper)
    {
        (this.drawing, this.view) = (drawing, view);
        scale = LargestScale(each => At(each).Paging);
        sheet = At(scale);

        PaperSheet At(double each) => PaperSheet.Of(paper, (across, down) => Divide(drawing, view, each, across, down));
    }

    /// <summary>How many pages there are.</summary>
    public int Count => sheet.Paging.Count;

    /// <summary>How large a drawing can be on the fewest pages that let its lettering be read, in millimetres for each of its units.</summary>
    /// <param name="divide">Divides it over pages at a scale.</param>
    internal static double LargestScale(Func<double, Paging> divide)
    {
        const int steps = 40;
        const double least = LeastType * Point / DiagramSizes.Type;
        var pages = divide(least).Count;
        return Enumerable.Range(0, steps).Select(step => least * (MostType - (step * (MostType - LeastType) / steps)) / LeastType).FirstOrDefault(scale => divide(scale).Count == pages, least);
    }

    /// <summary>Divides a gear's drawing, at a scale, over pages with so much room in millimetres; no symbol is cut on every page.</summary>
    internal static Paging Divide(CircuitDrawing drawing, GearView view, double scale, double across, double down)
    {
        var (width, height) = drawing.Size(view);
        return Paging.Of(across, down, width * scale, height * scale, [.. drawing.Boxes(view).Select(box => (box.X * scale, box.Y * scale, box.Width * scale, box.Height * scale))]);
    }

    /// <summary>Writes a page.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="page">Its number, from 0.</param>
    /// <param name="prefix">What every id begins with.</param>
    public void Write(TextWriter to, int page, string prefix = "g-")
    {
        var svg = new SvgWriter(to);
        var number = sheet.Number(page);
        drawing.Begin(svg, view, prefix, sheet.Width, sheet.Height, "mm", number);
        sheet.Part(svg, page, prefix, () =>
        {
            svg.Begin("g", ("class", "whole"), ("transform", SvgWriter.Path($"scale({scale:0.######})")));
            drawing.WriteWhole(svg, view, prefix);
            svg.End();
        });
        svg.Begin("g", ("transform", SvgWriter.Path($"translate({PaperSheet.Margin:0.##} {sheet.Foot + 4:0.##}) scale({FootType * Point / DiagramSizes.Type:0.######})")));
        svg.Text(0, 0, $"{drawing.Title(view)}{number}");
        svg.End();
        svg.End();
    }
}
