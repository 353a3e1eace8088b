using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Remedies;

/// <summary>The sizes that a hole can be drilled to.</summary>
internal static class DrillSizes
{
    /// <summary>Steps to look with: the series R10 of ISO 3 (preferred numbers), mm, each about 1.25 times the one before.</summary>
    public static ImmutableArray<double> Coarse { get; } = [0.63, 0.8, 1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0];

    /// <summary>Every number drill, and every tenth of a millimetre up to 10 mm, between two sizes (both left out); the smallest first.</summary>
    /// <param name="above">More than this, mm.</param>
    /// <param name="below">Less than this, mm.</param>
    public static IEnumerable<Shape.Hole> Between(double above, double below)
    {
        var metric = Enumerable.Range(3, 98).Select(tenths => Metric(tenths / 10.0));
        var drills = Enumerable.Range(NumberDrill.First, NumberDrill.Last).Select(number =>
            new Shape.Hole(NumberDrill.Diameter(number)!.Value, string.Create(CultureInfo.InvariantCulture, $"#{number}")));
        return metric.Concat(drills).Where(hole => hole.Diameter.Millimetres > above && hole.Diameter.Millimetres < below)
            .OrderBy(hole => hole.Diameter.Millimetres);
    }

    /// <summary>A hole of a metric size.</summary>
    /// <param name="millimetres">Its diameter.</param>
    public static Shape.Hole Metric(double millimetres) =>
        new(new Length(millimetres), string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.##} mm"));
}
