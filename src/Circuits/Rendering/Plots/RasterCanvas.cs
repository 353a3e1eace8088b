using System.Collections.Immutable;
using OxyPlot;

namespace Circuits.Rendering.Plots;

/// <summary>Draws a plot in pixels, with soft edges. Letters are drawn by strokes, since no face can be counted on.</summary>
internal sealed class RasterCanvas : PlotCanvas
{
    private const int RoundCorners = 12;

    private readonly double scale;
    private readonly double top;
    private readonly Coverage coverage;

    /// <param name="pixels">Where to draw.</param>
    /// <param name="scale">Pixels in a unit of the plot.</param>
    /// <param name="top">Where the plot begins, in its own unit.</param>
    public RasterCanvas(Pixels pixels, double scale, double top)
    {
        this.scale = scale;
        this.top = top;
        coverage = new Coverage(pixels);
    }

    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count < 2 || stroke.IsInvisible() || thickness <= 0) return;
        if (dashArray is { Length: > 0 })
        {
            foreach (var dash in Dash(points, [.. dashArray.Select(length => length * thickness)])) Line(dash, thickness);
        }
        else
        {
            Line(points, thickness);
        }

        Fill(stroke);
    }

    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count > 2 && fill.IsVisible())
        {
            coverage.Add([.. points.Select(Pixel)]);
            Fill(fill);
        }

        if (stroke.IsVisible() && thickness > 0) DrawLine([.. points, points[0]], stroke, thickness, edgeRenderingMode, dashArray, lineJoin);
    }

    public override void DrawText(
        ScreenPoint p, string text, OxyColor fill, string? fontFamily, double fontSize, double fontWeight, double rotate, HorizontalAlignment halign,
        VerticalAlignment valign, OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text)) return;
        var (sine, cosine) = Math.SinCos(rotate * Math.PI / 180);
        var unit = fontSize * Letters.Capital / 10;
        foreach (var (line, x, y, _) in Lines(text, fontSize, halign, valign))
        {
            var at = x;
            foreach (var (letter, advance) in Letters.Of(line))
            {
                var ink = letter.Strokes.IsEmpty ? 0 : letter.Strokes.Max(stroke => stroke.Max(point => point.X)) - letter.Strokes.Min(stroke => stroke.Min(point => point.X));
                var from = letter.Strokes.IsEmpty ? 0 : letter.Strokes.Min(stroke => stroke.Min(point => point.X));
                var wide = ink > 3 ? ((advance - 0.17) * fontSize) / ink : unit;
                var left = at + (((advance * fontSize) - (ink * wide)) / 2);
                foreach (var stroke in letter.Strokes)
                {
                    Line([.. stroke.Select(point => Turned(left + ((point.X - from) * wide), y - ((point.Y - 3) * unit)))], fontSize * (fontWeight > 500 ? 0.125 : 0.085));
                }

                at += advance * fontSize;
            }
        }

        Fill(fill);

        ScreenPoint Turned(double dx, double dy) => new(p.X + (dx * cosine) - (dy * sine), p.Y + (dx * sine) + (dy * cosine));
    }

    private void Fill(OxyColor color)
    {
        var clip = Clip is { } limit
            ? ((int)Math.Floor(limit.Left * scale), (int)Math.Floor((limit.Top + top) * scale), (int)Math.Ceiling(limit.Right * scale), (int)Math.Ceiling((limit.Bottom + top) * scale))
            : (0, 0, int.MaxValue, int.MaxValue);
        coverage.Fill(color.R, color.G, color.B, color.A, clip);
    }

    private (double X, double Y) Pixel(ScreenPoint point) => (point.X * scale, (point.Y + top) * scale);

    // A line is a box a piece with a round spot at every corner, all turning the same way so that none takes from another.
    private void Line(IList<ScreenPoint> points, double thickness)
    {
        var half = Math.Max(thickness * scale, 1) / 2;
        for (var i = 0; i < points.Count; i++)
        {
            var to = Pixel(points[i]);
            if (points.Count > 2 || half > 1) Spot(to, half);
            if (i == 0) continue;
            var from = Pixel(points[i - 1]);
            var (dx, dy) = (to.X - from.X, to.Y - from.Y);
            var length = Math.Sqrt((dx * dx) + (dy * dy));
            if (length < 1e-9) continue;
            var (nx, ny) = (-dy / length * half, dx / length * half);
            coverage.Add([(from.X + nx, from.Y + ny), (from.X - nx, from.Y - ny), (to.X - nx, to.Y - ny), (to.X + nx, to.Y + ny)]);
        }
    }

    private void Spot((double X, double Y) center, double radius) => coverage.Add(
    [
        .. Enumerable.Range(0, RoundCorners).Select(i => Math.SinCos(i * 2 * Math.PI / RoundCorners))
            .Select(turn => (center.X + (radius * turn.Cos), center.Y + (radius * turn.Sin))),
    ]);

    private static IEnumerable<List<ScreenPoint>> Dash(IList<ScreenPoint> points, ImmutableArray<double> lengths)
    {
        var (k, left) = (0, lengths[0]);
        var piece = new List<ScreenPoint> { points[0] };
        for (var i = 1; i < points.Count; i++)
        {
            var (from, to) = (points[i - 1], points[i]);
            var length = Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
            var at = 0.0;
            while (length - at > left)
            {
                at += left;
                var point = new ScreenPoint(from.X + ((to.X - from.X) * at / length), from.Y + ((to.Y - from.Y) * at / length));
                piece.Add(point);
                if (k % 2 == 0) yield return piece;
                piece = [point];
                k++;
                left = Math.Max(lengths[k % lengths.Length], 0.1);
            }

            left -= length - at;
            piece.Add(to);
        }

        if (k % 2 == 0 && piece.Count > 1) yield return piece;
    }
}
