using OxyPlot;

namespace Circuits.Rendering.Plots;

/// <summary>What a plot is drawn on. Text is measured alike on every kind, so a plot has one layout.</summary>
internal abstract class PlotCanvas : RenderContextBase
{
    private readonly Stack<OxyRect> clips = new();

    protected PlotCanvas() => RendersToScreen = false;

    public override int ClipCount => clips.Count;

    /// <summary>What is drawn now stays within this; null for no limit.</summary>
    protected OxyRect? Clip => clips.TryPeek(out var clip) ? clip : null;

    public override void PushClip(OxyRect clippingRectangle)
    {
        clips.Push(Clip is { } outer ? clippingRectangle.Intersect(outer) : clippingRectangle);
        ClipChanged();
    }

    public override void PopClip()
    {
        clips.Pop();
        ClipChanged();
    }

    public override OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text)) return OxySize.Empty;
        var lines = text.Split('\n');
        return new OxySize(lines.Max(Letters.Width) * fontSize, lines.Length * Letters.Line * fontSize);
    }

    /// <summary>Where the lines of a text are written, before it is turned about its point.</summary>
    protected static IEnumerable<(string Line, double X, double Y, double Width)> Lines(string text, double size, HorizontalAlignment across, VerticalAlignment up)
    {
        var lines = text.Split('\n');
        var height = lines.Length * Letters.Line * size;
        var top = up switch { VerticalAlignment.Top => 0, VerticalAlignment.Middle => -height / 2, _ => -height };
        for (var i = 0; i < lines.Length; i++)
        {
            var width = Letters.Width(lines[i]) * size;
            var left = across switch { HorizontalAlignment.Left => 0, HorizontalAlignment.Center => -width / 2, _ => -width };
            yield return (lines[i], left, top + (((i * Letters.Line) + Letters.Rise) * size), width);
        }
    }

    protected virtual void ClipChanged()
    {
    }
}
