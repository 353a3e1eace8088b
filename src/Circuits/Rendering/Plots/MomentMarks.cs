using System.Collections.Immutable;
using OxyPlot;
using OxyPlot.Annotations;

namespace Circuits.Rendering.Plots;

/// <summary>A moment to be marked.</summary>
/// <param name="Ms">When.</param>
/// <param name="Text">What happens.</param>
/// <param name="Shape">The mark.</param>
/// <param name="Color">Its colour.</param>
internal sealed record Moment(double Ms, string Text, MarkerType Shape, OxyColor Color);

/// <summary>Moments of a shift: a dashed line down the whole plot each, and what happens written above it, in rows so that no two touch.</summary>
/// <param name="moments">The moments.</param>
internal sealed class MomentMarks(ImmutableArray<Moment> moments) : Annotation
{
    /// <summary>How high a row is.</summary>
    public const double Row = 17;

    private const double Size = 11.5;
    private const double Gap = 12;
    private const double MarkRoom = 8;

    /// <summary>The rows that the moments need on a plot of some width.</summary>
    /// <param name="moments">The moments.</param>
    /// <param name="pixels">Where a moment lies.</param>
    /// <param name="end">Where the plot ends.</param>
    public static ImmutableArray<(double Left, int Row)> Places(ImmutableArray<Moment> moments, Func<double, double> pixels, double end)
    {
        var free = new List<double>();
        var places = ImmutableArray.CreateBuilder<(double, int)>();
        foreach (var moment in moments)
        {
            var width = MarkRoom + (Letters.Width(moment.Text) * Size);
            // What would run over the right edge is moved back, and so may cross the line of a later moment, never its text.
            var left = Math.Max(0, Math.Min(pixels(moment.Ms), end - width));
            var row = free.FindIndex(used => used + Gap <= left);
            if (row < 0)
            {
                row = free.Count;
                free.Add(0);
            }

            free[row] = left + width;
            places.Add((left, row));
        }

        return places.ToImmutable();
    }

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var (area, axis) = (PlotModel.PlotArea, XAxis ?? throw new InvalidOperationException("The marks stand on no axis."));
        var places = Places(moments, ms => axis.Transform(ms), area.Right);
        for (var i = 0; i < moments.Length; i++)
        {
            var moment = moments[i];
            var (left, row) = places[i];
            var x = axis.Transform(moment.Ms);
            var y = area.Top + 4 + ((row + 0.5) * Row);
            rc.DrawLine([new ScreenPoint(x, y), new ScreenPoint(x, area.Bottom)], moment.Color, 1, EdgeRenderingMode.Automatic, [3, 3], LineJoin.Round);
            rc.DrawMarker(new ScreenPoint(x, y), moment.Shape, null, 4, PlotColors.Paper, moment.Color, 1.5, EdgeRenderingMode.Automatic);
            rc.DrawText(new ScreenPoint(left + MarkRoom, y), moment.Text, PlotColors.Ink, null, Size, 400, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }
}
