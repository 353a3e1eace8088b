using Circuits.Model;
using Circuits.Rendering.Drawing;
using OxyPlot;
using OxyPlot.Axes;

namespace Circuits.Rendering.Plots;

/// <summary>What the plots have in common.</summary>
internal static class PlotParts
{
    /// <summary>The size of text.</summary>
    public const double TextSize = 12;

    private const double TitleSize = 15;

    /// <summary>An empty plot with its headings, shortened where they are wider than the plot.</summary>
    /// <param name="title">The first line.</param>
    /// <param name="subtitle">The second line.</param>
    /// <param name="width">How wide the plot is.</param>
    /// <param name="left">Room on the left for an axis.</param>
    /// <param name="right">Room on the right.</param>
    public static PlotModel Model(string title, string subtitle, double width, double left, double right) => new()
    {
        Title = Heading(title, TitleSize, width, bold: true),
        Subtitle = Heading(subtitle, TextSize, width, bold: false),
        TitleFontSize = TitleSize,
        SubtitleFontSize = TextSize,
        DefaultFontSize = TextSize,
        TitleColor = PlotColors.Ink,
        SubtitleColor = PlotColors.Faint,
        TextColor = PlotColors.Ink,
        PlotAreaBorderColor = PlotColors.Faint,
        PlotAreaBorderThickness = new OxyThickness(1),
        PlotMargins = new OxyThickness(left, double.NaN, right, double.NaN),
        Padding = new OxyThickness(8),
        Culture = System.Globalization.CultureInfo.InvariantCulture,
        TitleHorizontalAlignment = TitleHorizontalAlignment.CenteredWithinView,
    };

    // A viewer's own face may be wider still: a heading must not run over the edge in it.
    private static string Heading(string text, double size, double width, bool bold)
    {
        var shown = Printable.Of(text);
        var widest = Math.Max(size, DrawnText.Width(shown, size, bold) / Math.Max(0.1, Letters.Width(shown)));
        return Letters.Fit(shown, widest, width - 24);
    }

    /// <summary>An axis with its title, which names the unit, and faint lines across the plot.</summary>
    public static LinearAxis Axis(AxisPosition position, string? title, double from, double to) => new()
    {
        Position = position,
        Title = title,
        Minimum = from,
        Maximum = to,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = PlotColors.Grid,
        MajorGridlineThickness = 1,
        TicklineColor = PlotColors.Faint,
        AxislineStyle = LineStyle.Solid,
        AxislineColor = PlotColors.Faint,
        AxislineThickness = 1,
        MinorTickSize = 0,
        AxisTitleDistance = 8,
        TextColor = PlotColors.Ink,
        TitleColor = PlotColors.Ink,
        IsZoomEnabled = false,
    };

    /// <summary>What stands below the title: the unit, where its numbers come from, the parts.</summary>
    public static string Origin(Assembly assembly) =>
        $"{assembly.Unit.Name} (data: {Words.Of(assembly.Unit.Data)}); {Words.Of(assembly)}{string.Concat(assembly.Changes.Select(change => "; " + PhraseWords.Of(change)))}";

    /// <summary>A text wrapped to lines of at most so many, each at most so wide; what is left over is cut.</summary>
    public static List<string> Wrap(string text, double size, double width, int most)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Printable.Of(text).Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Letters.Width(longer) * size > width && lines.Count < most - 1)
            {
                lines.Add(Letters.Fit(line, size, width));
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        lines.Add(Letters.Fit(line, size, width));
        return lines;
    }
}
