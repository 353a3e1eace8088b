using System.Globalization;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Sizes and counts in words.</summary>
internal static class BenchText
{
    /// <summary>A size: <c>5 mm</c>, <c>3 x 15 mm</c>.</summary>
    public static string Of(BenchSize size) => size.Length is { } length
        ? string.Create(CultureInfo.InvariantCulture, $"{size.Width:0.###} x {length:0.###} mm")
        : string.Create(CultureInfo.InvariantCulture, $"{size.Width:0.###} mm");

    /// <summary>A count with the trait that is counted: <c>5 balls of 9 mm</c>, <c>1 ball of 6 mm</c>.</summary>
    public static string Of(int count, Trait trait) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? trait.One ?? trait.Phrase : trait.Phrase)}");

    /// <summary>The size of a shape as it is measured; null when it cannot be.</summary>
    public static BenchSize? SizeOf(Shape shape) => shape switch
    {
        Shape.Hole hole => new BenchSize(hole.Diameter.Millimetres, null),
        Shape.Slot slot => new BenchSize(slot.Width.Millimetres, slot.Length.Millimetres),
        _ => null,
    };
}
