using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using OxyPlot;

namespace Circuits.Rendering.Plots;

/// <summary>One sheet of a plot.</summary>
/// <param name="Model">What is drawn.</param>
/// <param name="Width">In units of 1/96 inch.</param>
/// <param name="Height">In units of 1/96 inch.</param>
/// <param name="Title">What it is, in a line.</param>
/// <param name="Description">What it shows, for those who do not see it.</param>
internal sealed record PlotSheet(PlotModel Model, double Width, double Height, string Title, string Description);

/// <summary>A plot of one or several sheets below one another, ready to be written.</summary>
public sealed class Plot
{
    private readonly ImmutableArray<PlotSheet> sheets;

    internal Plot(IEnumerable<PlotSheet> sheets) => this.sheets = [.. sheets];

    /// <summary>How many sheets there are.</summary>
    public int Sheets => sheets.Length;

    private double Width => sheets.Max(sheet => sheet.Width);

    private double Height => sheets.Sum(sheet => sheet.Height);

    /// <summary>The plot as an SVG file.</summary>
    public string Svg() => "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + Element("plot");

    /// <summary>The plot as an SVG element, to stand in a page.</summary>
    /// <param name="id">Stands before every id in it; a name of letters, digits and dashes.</param>
    public string Element(string id)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width:0.##} {Height:0.##}\" width=\"{Width:0.##}\" height=\"{Height:0.##}\" ");
        svg.Append(CultureInfo.InvariantCulture, $"role=\"img\" aria-labelledby=\"{id}-title {id}-description\" font-family=\"system-ui, sans-serif\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">{Markup.Text(string.Join("; ", sheets.Select(sheet => sheet.Title)))}</title>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<desc id=\"{id}-description\">{Markup.Text(string.Join("\n", sheets.Select(sheet => sheet.Description)))}</desc>\n");
        var top = 0.0;
        for (var i = 0; i < sheets.Length; i++)
        {
            var canvas = new SvgCanvas(FormattableString.Invariant($"{id}-{i}"));
            Draw(sheets[i], canvas);
            svg.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate(0 {top:0.##})\">\n").Append(canvas).Append("</g>\n");
            top += sheets[i].Height;
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void Draw(PlotSheet sheet, SvgCanvas canvas)
    {
        IPlotModel model = sheet.Model;
        model.Update(true);
        canvas.DrawRectangle(new OxyRect(0, 0, sheet.Width, sheet.Height), PlotColors.Paper, OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        model.Render(canvas, new OxyRect(0, 0, sheet.Width, sheet.Height));
        // The library writes its own faults into the picture; a picture like that must not get out.
        if (sheet.Model.GetLastPlotException() is { } fault) throw new InvalidOperationException($"The plot {sheet.Title} cannot be drawn.", fault);
    }
}
