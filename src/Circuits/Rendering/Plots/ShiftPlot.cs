using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Shifts;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;

namespace Circuits.Rendering.Plots;

/// <summary>Shifts over time: pressure, stroke and torque capacity of every clutch, with the moments at which clutches take hold and let go.</summary>
public static class ShiftPlot
{
    private const double Width = 860;
    private const double Left = 64;
    private const double Right = 20;
    private const double Panels = 470;
    private const string Pressure = "pressure";
    private const string Stroke = "stroke";
    private const string Capacity = "capacity";
    private const double MarkerSize = 5;

    /// <summary>A sheet for each shift.</summary>
    /// <param name="report">The shifts.</param>
    /// <param name="sideBySide">Whether to draw the assembly that it is held against as well.</param>
    /// <param name="units">The units of pressure and torque.</param>
    public static Plot Of(ShiftReport report, bool sideBySide, UnitSystem units) =>
        new(report.Shifts.Select(pair => Sheet(report.Assembly, pair.Here, sideBySide ? pair.Beside : null, report.Beside?.Matched ?? "beside", units)));

    internal static PlotSheet Sheet(Assembly assembly, TimedShiftReport shift, TimedShiftReport? beside, string besideName, UnitSystem units)
    {
        var end = Math.Max(shift.EndMs, 1);
        var moments = Moments(shift);
        var rows = moments.IsEmpty ? 0
            : 1 + MomentMarks.Places(moments, ms => Left + 8 + (ms / end * (Width - Left - Right - 16)), Width - Right - 8).Max(place => place.Row);
        var strip = 8 + (rows * MomentMarks.Row);
        var drawn = Drawn(shift);
        var legendRows = Math.Ceiling((drawn.Count + 1) * (beside is null ? 1 : 2) / 4.0);
        var height = 120 + Panels + strip + (20 * legendRows);
        var title = $"Shift {shift.Plan.Name}: {VerdictText.Of(shift.Verdict)}{(shift.Reason.IsEmpty ? "" : $", {PhraseWords.Of(shift.Reason, units)}")}";
        var model = PlotParts.Model(title, PlotParts.Origin(assembly), Width, Left, Right);
        var part = Panels / (Panels + strip);
        model.Axes.Add(PlotParts.Axis(AxisPosition.Bottom, "time since the shift began, ms", 0, end));
        Panel(model, Pressure, $"pressure, {Measures.PressureUnit(units)}", 0.64 * part, part, InUnits(Most(shift, beside, sample => [sample.LineKilopascals, .. sample.Clutches.Select(clutch => clutch.Kilopascals)]), units));
        Panel(model, Stroke, "stroke, %", 0.40 * part, 0.61 * part, Math.Max(100, 100 * Most(shift, beside, sample => sample.Clutches.Select(clutch => clutch.Stroke))));
        Panel(model, Capacity, $"can carry, {Measures.UnitOf(Dimension.Torque, units)}", 0, 0.37 * part, TorqueIn(Most(shift, beside, sample => sample.Clutches.Select(clutch => clutch.Capacity)), units));
        model.Legends.Add(new Legend
        {
            LegendPosition = LegendPosition.BottomCenter,
            LegendPlacement = LegendPlacement.Outside,
            LegendOrientation = LegendOrientation.Horizontal,
            LegendTextColor = PlotColors.Ink,
            LegendSymbolLength = 34,
            LegendBorderThickness = 0,
        });
        Curves(model, shift, drawn, "", 1, units);
        if (beside is not null) Curves(model, beside, [.. drawn.Select(clutch => (clutch.Name, beside.Clutches.Select(each => each.Clutch).ToList().IndexOf(clutch.Name)))], $" ({besideName})", 0.45, units);
        model.Annotations.Add(new MomentMarks(moments) { YAxisKey = Pressure, Layer = AnnotationLayer.BelowSeries, ClipByXAxis = false, ClipByYAxis = false });
        foreach (var mark in Points(shift, drawn, units)) model.Annotations.Add(mark);
        return new PlotSheet(model, Width, height, $"{title}. {PlotParts.Origin(assembly)}", Describe(shift, moments));
    }

    private static void Panel(PlotModel model, string key, string title, double from, double to, double most)
    {
        var axis = PlotParts.Axis(AxisPosition.Left, title, 0, Math.Max(most, 1) * 1.06);
        axis.Key = key;
        axis.StartPosition = from;
        axis.EndPosition = to;
        model.Axes.Add(axis);
    }

    private static void Curves(PlotModel model, TimedShiftReport shift, List<(string Name, int Index)> clutches, string note, double weight, UnitSystem units)
    {
        Add(Pressure, -1, "line, at the pump" + Letters.Fit(Printable.Of(note), PlotParts.TextSize, 70), sample => InUnits(sample.LineKilopascals, units));
        for (var i = 0; i < clutches.Count; i++)
        {
            var (name, index) = clutches[i];
            if (index < 0) continue;
            Add(Pressure, i, null, sample => InUnits(sample.Clutches[index].Kilopascals, units));
            Add(Stroke, i, null, sample => sample.Clutches[index].Stroke * 100);
            Add(Capacity, i, Letters.Fit(Printable.Of(name), PlotParts.TextSize, 150) + Letters.Fit(Printable.Of(note), PlotParts.TextSize, 70), sample => TorqueIn(sample.Clutches[index].Capacity, units));
        }

        void Add(string axis, int index, string? title, Func<ShiftSample, double> value)
        {
            var color = index < 0 ? PlotColors.Faint : PlotColors.Lines[index % PlotColors.Lines.Length];
            var dashes = index < 0 ? [] : PlotColors.Dashes[index % PlotColors.Dashes.Length];
            var series = new LineSeries
            {
                YAxisKey = axis,
                Title = title,
                RenderInLegend = title is not null,
                Color = color,
                StrokeThickness = (index < 0 ? 1.2 : 2.2) * weight,
                Dashes = dashes.IsEmpty ? null : [.. dashes],
                LineStyle = LineStyle.Solid,
                CanTrackerInterpolatePoints = false,
            };
            foreach (var sample in shift.Samples) series.Points.Add(new DataPoint(sample.Ms, value(sample)));
            model.Series.Add(series);
        }
    }

    // Clutches that only hold are drawn where nothing else is; there a straight line is the answer.
    private static List<(string Name, int Index)> Drawn(TimedShiftReport shift)
    {
        var all = shift.Clutches.Select((clutch, index) => (clutch.Clutch, index, clutch.Role)).ToList();
        var changing = all.Where(clutch => clutch.Role != ClutchRole.Holding).ToList();
        return [.. (changing.Count > 0 ? changing : all).Select(clutch => (clutch.Clutch, clutch.index))];
    }

    private static ImmutableArray<Moment> Moments(TimedShiftReport shift)
    {
        var moments = new List<Moment>();
        var drawn = Drawn(shift);
        for (var i = 0; i < drawn.Count; i++)
        {
            var clutch = shift.Clutches[drawn[i].Index];
            var color = PlotColors.Lines[i % PlotColors.Lines.Length];
            var name = Letters.Fit(Printable.Of(clutch.Clutch), 11.5, 150);
            if (clutch.Role == ClutchRole.OnComing)
            {
                Add(clutch.FillMs, $"{name} touches", MarkerType.Circle, color);
                if (shift.HoldsMs != clutch.HoldsMs) Add(clutch.HoldsMs, $"{name} holds", MarkerType.Triangle, color);
            }
            else if (clutch.Role == ClutchRole.OffGoing)
            {
                Add(clutch.NeedBefore > 0 ? clutch.LetsGoMs : null, $"{name} lets go", MarkerType.Diamond, color);
                Add(clutch.ReleasedMs, $"{name} is off", MarkerType.Square, color);
            }
        }

        Add(shift.HoldsMs, $"{Letters.Fit(Printable.Of(shift.Plan.To.Name), 11.5, 80)} holds", MarkerType.Triangle, PlotColors.Ink);
        return [.. moments.OrderBy(moment => moment.Ms)];

        void Add(double? when, string what, MarkerType shape, OxyColor color)
        {
            if (when is { } ms && ms <= shift.EndMs) moments.Add(new Moment(ms, FormattableString.Invariant($"{what} {ms:0} ms"), shape, color));
        }
    }

    // The same moments on the curves themselves: how much a clutch can carry when it holds, touches or lets go.
    private static IEnumerable<PointAnnotation> Points(TimedShiftReport shift, List<(string Name, int Index)> drawn, UnitSystem units)
    {
        for (var i = 0; i < drawn.Count; i++)
        {
            var (clutch, index) = (shift.Clutches[drawn[i].Index], drawn[i].Index);
            (double? Ms, MarkerType Shape)[] marks = clutch.Role switch
            {
                ClutchRole.OnComing => [(clutch.FillMs, MarkerType.Circle), (clutch.HoldsMs, MarkerType.Triangle)],
                ClutchRole.OffGoing => [(clutch.NeedBefore > 0 ? clutch.LetsGoMs : null, MarkerType.Diamond), (clutch.ReleasedMs, MarkerType.Square)],
                _ => [],
            };
            foreach (var (ms, shape) in marks)
            {
                if (ms is not { } when || ShiftSamples.At(shift, when) is not { } sample) continue;
                yield return new PointAnnotation
                {
                    X = when,
                    Y = TorqueIn(sample.Clutches[index].Capacity, units),
                    YAxisKey = Capacity,
                    Shape = shape,
                    Size = MarkerSize,
                    Fill = PlotColors.Paper,
                    Stroke = PlotColors.Lines[i % PlotColors.Lines.Length],
                    StrokeThickness = 1.5,
                    Layer = AnnotationLayer.AboveSeries,
                };
            }
        }
    }

    private static string Describe(TimedShiftReport shift, ImmutableArray<Moment> moments) =>
        $"Shift {shift.Plan.Name}. Pressure, stroke and torque capacity over {shift.EndMs.ToString("0", System.Globalization.CultureInfo.InvariantCulture)} ms of "
        + $"{string.Join(", ", Drawn(shift).Select(clutch => clutch.Name))}. {string.Join("; ", moments.Select(moment => moment.Text))}.";

    private static double Most(TimedShiftReport shift, TimedShiftReport? beside, Func<ShiftSample, IEnumerable<double>> values) =>
        shift.Samples.Concat(beside?.Samples ?? []).SelectMany(values).DefaultIfEmpty(0).Max();

    private static double InUnits(double kilopascals, UnitSystem units) => Measures.Value(new Quantity(Dimension.Pressure, kilopascals), units);

    private static double TorqueIn(double newtonMetres, UnitSystem units) => Measures.Value(new Quantity(Dimension.Torque, newtonMetres), units);
}
