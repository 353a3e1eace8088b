using System.Globalization;
using Circuits.Quantities;
using Circuits.Studies.Sizing;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace Circuits.Rendering.Plots;

/// <summary>The time that each diameter of a hole gives, with the wanted time, the hole as it is and the answer.</summary>
public static class SizePlot
{
    private const double Width = 760;
    private const double Height = 480;

    /// <summary>The plot.</summary>
    /// <param name="report">The hole, and every diameter that was tried.</param>
    /// <param name="units">The units of its diameters.</param>
    public static Plot Of(SizeReport report, UnitSystem units)
    {
        var request = report.Request;
        var answer = report.Outcome == SizeOutcome.Found && report.Hole is { } found ? $"{Measures.Length(found.Millimetres, units)} at {request.Location}" : PhraseWords.Of(report.Reason, units);
        var title = $"{answer}; wanted {SizeText.Wanted(report)}";
        var model = PlotParts.Model(title, PlotParts.Origin(report.Assembly), Width, 70, 24);
        var given = report.Tried.Where(hole => hole.Ms is not null).Select(hole => (X: hole.Millimetres, Y: hole.Ms!.Value)).ToList();
        var (low, high) = Range(report, [.. given.Select(point => point.Y)]);
        var (from, to) = Diameters(report, given, high);
        model.Axes.Add(PlotParts.Axis(AxisPosition.Bottom, $"diameter of the hole at {Letters.Fit(Printable.Of(request.Location), PlotParts.TextSize, 300)}, {Measures.UnitOf(Dimension.Length, units)}", X(from), X(to)));
        model.Axes.Add(PlotParts.Axis(AxisPosition.Left, $"{Words(request.Time)}, ms", low, high));
        var curve = new LineSeries
        {
            Color = PlotColors.Lines[0],
            StrokeThickness = 2,
            MarkerType = MarkerType.Circle,
            MarkerSize = 2.5,
            MarkerFill = PlotColors.Lines[0],
            RenderInLegend = false,
        };
        foreach (var hole in report.Tried) curve.Points.Add(hole.Ms is { } ms ? new DataPoint(X(hole.Millimetres), ms) : DataPoint.Undefined);
        model.Series.Add(curve);
        model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Horizontal,
            Y = request.Ms,
            Color = PlotColors.Lines[1],
            LineStyle = LineStyle.Dash,
            StrokeThickness = 1.5,
            TextColor = PlotColors.Ink,
            Text = FormattableString.Invariant($"wanted {request.Ms:0.#} ms"),
            TextLinePosition = 1,
            TextHorizontalAlignment = HorizontalAlignment.Right,
            // Above the line: below a short time there is no room.
            TextVerticalAlignment = VerticalAlignment.Bottom,
        });
        if (report.Now is { Ms: { } now } hole1) Mark(model, X(hole1.Millimetres), now, FormattableString.Invariant($"now {Measures.Length(hole1.Millimetres, units)}: {now:0} ms"), MarkerType.Square, PlotColors.Lines[3]);
        if (report.Outcome == SizeOutcome.Found && report.Hole is { Ms: { } answered } hole2)
        {
            Mark(model, X(hole2.Millimetres), answered, FormattableString.Invariant($"answer {Measures.Length(hole2.Millimetres, units)}: {answered:0} ms"), MarkerType.Triangle, PlotColors.Lines[2]);
            var drop = new LineSeries { Color = PlotColors.Lines[2], StrokeThickness = 1.2, LineStyle = LineStyle.Dot, RenderInLegend = false };
            drop.Points.Add(new DataPoint(X(hole2.Millimetres), low));
            drop.Points.Add(new DataPoint(X(hole2.Millimetres), answered));
            model.Series.Add(drop);
        }

        var text = $"Time against diameter. {string.Join("; ", report.Tried.Select(tried => Measures.Length(tried.Millimetres, units) + ": " + (tried.Ms is { } ms ? ms.ToString("0", CultureInfo.InvariantCulture) + " ms" : "never")))}.";
        return new Plot([new PlotSheet(model, Width, Height, $"{title}. {PlotParts.Origin(report.Assembly)}", text)]);

        double X(double millimetres) => Measures.Value(new Quantity(Dimension.Length, millimetres), units);
    }

    private static void Mark(PlotModel model, double x, double y, string text, MarkerType shape, OxyColor color)
    {
        var axis = model.Axes[0];
        // Times fall as holes grow, so what stands to the right of a point, above it, is clear of the curve.
        var isRight = x > axis.Minimum + (0.72 * (axis.Maximum - axis.Minimum));
        model.Annotations.Add(new PointAnnotation
        {
            X = x,
            Y = y,
            Shape = shape,
            Size = 6,
            Fill = PlotColors.Paper,
            Stroke = color,
            StrokeThickness = 2,
            Text = text,
            TextColor = PlotColors.Ink,
            TextMargin = 6,
            TextHorizontalAlignment = isRight ? HorizontalAlignment.Right : HorizontalAlignment.Left,
            TextVerticalAlignment = VerticalAlignment.Bottom,
        });
    }

    // A small hole may take many times as long as the one that is wanted; the plot shows what lies near the answer.
    private static (double Low, double High) Range(SizeReport report, List<double> times)
    {
        List<double> near = [report.Request.Ms, 0];
        if (report.Now?.Ms is { } now) near.Add(now);
        if (times.Count > 0) near.Add(times.Min());
        var (low, high) = (near.Min(), near.Max());
        if (report.Outcome != SizeOutcome.Found && times.Count > 0) high = Math.Max(high, times.Max());
        var span = Math.Max(high - low, 10);
        return (low < 0 ? low - (0.1 * span) : 0, high + (0.6 * span));
    }

    private static (double From, double To) Diameters(SizeReport report, List<(double X, double Y)> given, double high)
    {
        List<double> near = [.. given.Where(point => point.Y <= high).Select(point => point.X)];
        if (report.Now is { } now) near.Add(now.Millimetres);
        if (report.Hole is { } hole) near.Add(hole.Millimetres);
        if (near.Count == 0) near = [report.Request.Least, report.Request.Most ?? report.Request.Least * 2];
        var (from, to) = (near.Min(), near.Max());
        // Twice the answer is as far as anybody looks; a hole so large no longer meters.
        if (report.Hole is { } answer) to = Math.Min(to, Math.Max(2 * answer.Millimetres, 1.3 * (report.Now?.Millimetres ?? 0)));
        return (Math.Max(0, from * 0.8), Math.Max(to, from + 0.2) * 1.08);
    }

    private static string Words(WantedTime time) => time switch
    {
        WantedTime.Fill => "until it touches",
        WantedTime.Hold => "until the gear holds",
        WantedTime.Release => "until it lets go",
        _ => "from letting go to holding",
    };
}
