using System.Globalization;

namespace Circuits.Rendering.Drawing.Paper;

/// <summary>A page of paper that shows a part of a drawing above a foot, upright or across, whichever takes fewer pages. Lengths in millimetres.</summary>
internal sealed class PaperSheet
{
    /// <summary>What is left free at every edge, for printers that cannot reach it.</summary>
    public const double Margin = 10;

    private const double FootHeight = 16;

    private PaperSheet(double width, double height, Paging paging) => (Width, Height, Paging) = (width, height, paging);

    /// <summary>The page's width.</summary>
    public double Width { get; }

    /// <summary>The page's height.</summary>
    public double Height { get; }

    /// <summary>How the drawing is divided.</summary>
    public Paging Paging { get; }

    /// <summary>The height of the line that a foot begins at.</summary>
    public double Foot => Height - Margin - FootHeight + 6;

    /// <summary>Divides a drawing over pages of a paper.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="divide">Divides the drawing over pages with so much room, across and down.</param>
    public static PaperSheet Of(PaperSize paper, Func<double, double, Paging> divide)
    {
        var upright = Divide(paper.Width, paper.Height);
        var across = Divide(paper.Height, paper.Width);
        return across.Paging.Count < upright.Paging.Count ? across : upright;

        PaperSheet Divide(double width, double height) => new(width, height, divide(width - (2 * Margin), height - (2 * Margin) - FootHeight));
    }

    /// <summary>Which page of how many, after a comma; empty where there is one.</summary>
    public string Number(int page) => Paging.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", page {page + 1} of {Paging.Count}");

    /// <summary>Writes what a page shows of a drawing.</summary>
    /// <param name="svg">What it is written to: the page itself, in millimetres.</param>
    /// <param name="page">Its number, from 0.</param>
    /// <param name="prefix">What ids begin with.</param>
    /// <param name="draw">Draws the whole, its upper left corner at the origin.</param>
    public void Part(SvgWriter svg, int page, string prefix, Action draw)
    {
        var (left, top) = Paging.Corner(page);
        svg.Begin("clipPath", ("id", $"{prefix}page"));
        svg.Box(Margin, Margin, Paging.RoomX, Paging.RoomY);
        svg.End();
        svg.Begin("g", ("clip-path", $"url(#{prefix}page)"));
        svg.Begin("g", ("transform", SvgWriter.Path($"translate({Margin - left:0.##} {Margin - top:0.##})")));
        draw();
        foreach (var (x, y) in Paging.Crosses())
            svg.Empty("path", ("d", SvgWriter.Path($"M{x - 4:0.##} {y:0.##}h8M{x:0.##} {y - 4:0.##}v8")), ("class", "cross"), ("fill", "none"), ("stroke", "#000000"), ("stroke-width", "0.25"));
        svg.End();
        svg.End();
    }
}
