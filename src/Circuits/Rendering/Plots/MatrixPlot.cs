using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Rendering.Matrix;
using Circuits.Studies.Matrix;
using OxyPlot;
using OxyPlot.Axes;

namespace Circuits.Rendering.Plots;

/// <summary>The matrix as a heat map: a row for each group of assemblies, best first, a column for each gear.</summary>
public static class MatrixPlot
{
    /// <summary>Most groups in a picture; groups with a matched set stand in it all the same.</summary>
    public const int MostGroups = 60;

    private const double Row = 22;
    private const double Left = 210;
    private const double Right = 330;

    /// <summary>The plot.</summary>
    /// <param name="summary">The groups.</param>
    public static Plot Of(MatrixSummary summary)
    {
        var space = summary.Space;
        var ordered = summary.BestFirst();
        var shown = ordered.Where((group, index) => index < MostGroups || group.Matched.Count > 0).ToList();
        ImmutableArray<string> gears = [.. space.Gears.Select(gear => Letters.Fit(Printable.Of(space.Unit.Gears[gear].Name), PlotParts.TextSize, 60))];
        var width = Left + Right + (Math.Clamp(gears.Max(Letters.Width) * PlotParts.TextSize, 22, 60) + 8) * gears.Length;
        var height = 150 + (Row * shown.Count);
        var right = summary.Groups.Where(group => group.Behaviour.Verdict == Verdict.AsCharted).Sum(group => group.Count);
        var title = $"{Words.Count(space.Count, "assembly", "assemblies")}: {right.ToString(CultureInfo.InvariantCulture)} as charted in every gear";
        var origin = $"{space.Unit.Name} (data: {Words.Of(space.Unit.Data)}); {Words.Count(ordered.Count, "group")}, best first"
            + (shown.Count < ordered.Count ? $"; {shown.Count.ToString(CultureInfo.InvariantCulture)} shown" : "");
        var model = PlotParts.Model(title, origin, width, Left, Right);
        model.Axes.Add(Names(AxisPosition.Top, "gear", gears));
        model.Axes.Add(Names(AxisPosition.Left, null, [.. shown.Select(group => Letters.Fit(Label(group), PlotParts.TextSize, Left - 50))], reversed: true));
        model.Annotations.Add(new VerdictCells(
            [.. shown.Select(group => group.Behaviour.Gears.Select(gear => gear.Verdict).ToImmutableArray())],
            [.. shown.Select(group => Letters.Fit(Printable.Of(string.Join("; ", summary.BoxesOf(group).Select(box => MatrixText.Of(space, box)))), 11, Right - 24))]));
        model.Padding = new OxyThickness(8, 8, 8, VerdictCells.KeyRoom);
        var rows = shown.Select(group => $"Group {Label(group)}: {string.Join(", ", space.Gears.Zip(group.Behaviour.Gears, (gear, behaviour) => $"{space.Unit.Gears[gear].Name} {Words.Of(behaviour.Verdict)}"))}.");
        return new Plot([new PlotSheet(model, width, height, $"{title}. {origin}", string.Join(" ", rows))]);
    }

    private static string Label(MatrixGroup group) => Printable.Of(
        FormattableString.Invariant($"{group.Number}, {group.Count}") + string.Concat(group.Matched.Select(set => $" *{set}")));

    private static LinearAxis Names(AxisPosition position, string? title, ImmutableArray<string> names, bool reversed = false)
    {
        var axis = PlotParts.Axis(position, title, -0.5, names.Length - 0.5);
        axis.MajorStep = 1;
        axis.MajorGridlineStyle = LineStyle.None;
        axis.TickStyle = TickStyle.None;
        axis.LabelFormatter = value => value > -0.4 && value < names.Length - 0.6 && Math.Abs(value - Math.Round(value)) < 1e-6 ? names[(int)Math.Round(value)] : "";
        if (reversed) (axis.StartPosition, axis.EndPosition) = (1, 0);
        return axis;
    }
}
