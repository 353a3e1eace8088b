using System.Globalization;
using System.Text;
using OxyPlot;

namespace Circuits.Rendering.Plots;

/// <summary>Draws a plot as elements of an SVG picture.</summary>
internal sealed class SvgCanvas : RenderContextBase
{
    private readonly string id;
    private readonly StringBuilder body = new();
    private readonly Stack<OxyRect> clips = new();
    private int clipNumber;
    private bool open;

    /// <param name="id">Stands before every id, so that several pictures may stand in one page.</param>
    public SvgCanvas(string id)
    {
        this.id = id;
        RendersToScreen = false;
    }

    public override int ClipCount => clips.Count;

    /// <summary>What has been drawn.</summary>
    public override string ToString()
    {
        Close();
        return body.ToString();
    }

    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count < 2 || stroke.IsInvisible() || thickness <= 0) return;
        Begin("polyline").Append(" points=\"");
        Points(points);
        body.Append("\" fill=\"none\"");
        Stroke(stroke, thickness, dashArray);
        body.Append(" stroke-linejoin=\"round\"/>\n");
    }

    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count < 2) return;
        Begin("polygon").Append(" points=\"");
        Points(points);
        body.Append('"');
        Fill(fill);
        Stroke(stroke, thickness, dashArray);
        body.Append("/>\n");
    }

    public override void DrawRectangle(OxyRect rectangle, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        if (fill.IsInvisible() && (stroke.IsInvisible() || thickness <= 0)) return;
        Begin("rect").Append(CultureInfo.InvariantCulture, $" x=\"{Markup.Number(rectangle.Left)}\" y=\"{Markup.Number(rectangle.Top)}\" width=\"{Markup.Number(rectangle.Width)}\" height=\"{Markup.Number(rectangle.Height)}\"");
        Fill(fill);
        Stroke(stroke, thickness, null);
        body.Append("/>\n");
    }

    public override void DrawText(
        ScreenPoint p, string text, OxyColor fill, string? fontFamily, double fontSize, double fontWeight, double rotate, HorizontalAlignment halign,
        VerticalAlignment valign, OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text)) return;
        var lines = text.Split('\n');
        var height = lines.Length * Letters.Line * fontSize;
        var top = valign switch { VerticalAlignment.Top => 0, VerticalAlignment.Middle => -height / 2, _ => -height };
        for (var i = 0; i < lines.Length; i++)
        {
            var y = top + (((i * Letters.Line) + Letters.Rise) * fontSize);
            var place = rotate == 0
                ? $" x=\"{Markup.Number(p.X)}\" y=\"{Markup.Number(p.Y + y)}\""
                : $" y=\"{Markup.Number(y)}\" transform=\"translate({Markup.Number(p.X)} {Markup.Number(p.Y)}) rotate({Markup.Number(rotate)})\"";
            Begin("text").Append(place).Append(CultureInfo.InvariantCulture, $" font-size=\"{Markup.Number(fontSize)}\"");
            if (fontWeight > 500) body.Append(" font-weight=\"bold\"");
            var anchor = halign switch { HorizontalAlignment.Left => "", HorizontalAlignment.Center => "middle", _ => "end" };
            if (anchor.Length > 0) body.Append(" text-anchor=\"").Append(anchor).Append('"');
            Fill(fill);
            body.Append('>').Append(Markup.Text(lines[i])).Append("</text>\n");
        }
    }

    public override OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text)) return OxySize.Empty;
        var lines = text.Split('\n');
        return new OxySize(lines.Max(Letters.Width) * fontSize, lines.Length * Letters.Line * fontSize);
    }

    public override void PushClip(OxyRect clippingRectangle)
    {
        clips.Push(clips.TryPeek(out var outer) ? clippingRectangle.Intersect(outer) : clippingRectangle);
        ClipChanged();
    }

    public override void PopClip()
    {
        clips.Pop();
        ClipChanged();
    }

    private void ClipChanged()
    {
        Close();
        if (!clips.TryPeek(out var clip)) return;
        var name = FormattableString.Invariant($"{id}-clip{clipNumber++}");
        body.Append(CultureInfo.InvariantCulture, $"<clipPath id=\"{name}\"><rect x=\"{Markup.Number(clip.Left)}\" y=\"{Markup.Number(clip.Top)}\" width=\"{Markup.Number(clip.Width)}\" height=\"{Markup.Number(clip.Height)}\"/></clipPath>\n<g clip-path=\"url(#{name})\">\n");
        open = true;
    }

    private void Close()
    {
        if (open) body.Append("</g>\n");
        open = false;
    }

    private StringBuilder Begin(string element) => body.Append('<').Append(element);

    private void Points(IList<ScreenPoint> points)
    {
        for (var i = 0; i < points.Count; i++)
        {
            if (i > 0) body.Append(' ');
            body.Append(Markup.Number(points[i].X)).Append(',').Append(Markup.Number(points[i].Y));
        }
    }

    private void Fill(OxyColor color)
    {
        if (color.IsInvisible()) body.Append(" fill=\"none\"");
        else Paint("fill", color);
    }

    private void Stroke(OxyColor color, double thickness, double[]? dashes)
    {
        if (color.IsInvisible() || thickness <= 0) return;
        Paint("stroke", color);
        body.Append(" stroke-width=\"").Append(Markup.Number(thickness)).Append('"');
        if (dashes is { Length: > 0 }) body.Append(" stroke-dasharray=\"").AppendJoin(' ', dashes.Select(dash => Markup.Number(dash * thickness))).Append('"');
    }

    // A page may set the variables; a picture of its own has the colours that stand beside them.
    private void Paint(string attribute, OxyColor color)
    {
        body.Append(CultureInfo.InvariantCulture, $" {attribute}=\"#{color.R:x2}{color.G:x2}{color.B:x2}\"");
        if (color.A < byte.MaxValue) body.Append(CultureInfo.InvariantCulture, $" {attribute}-opacity=\"{Markup.Number(color.A / 255.0)}\"");
        if (PlotColors.NameOf(color) is { } name) body.Append(CultureInfo.InvariantCulture, $" data-{attribute}=\"{name}\"");
    }
}
