using System.Globalization;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>Sizes in words, for the answers to "through what".</summary>
internal static class SizeText
{
    public static string Of(Shape? shape) => shape switch
    {
        null => "open",
        Shape.Hole { Depth: { } depth } hole => string.Create(CultureInfo.InvariantCulture, $"hole {hole.Diameter.Millimetres:0.00} mm, {depth.Millimetres:0.#} mm deep"),
        Shape.Hole hole => string.Create(CultureInfo.InvariantCulture, $"hole {hole.Diameter.Millimetres:0.00} mm"),
        Shape.Slot slot => string.Create(CultureInfo.InvariantCulture, $"slot {slot.Width.Millimetres:0.##} x {slot.Length.Millimetres:0.##} mm"),
        Shape.Cutout cutout => string.Create(CultureInfo.InvariantCulture, $"{cutout.Size.SquareMillimetres:0.##} mm2"),
        Shape.RoundGap gap => string.Create(CultureInfo.InvariantCulture, $"gap {gap.Height.Millimetres:0.0##} mm around {gap.Diameter.Millimetres:0.##} mm, {gap.Length.Millimetres:0.#} mm long"),
        Shape.FlatGap gap => string.Create(CultureInfo.InvariantCulture, $"gap {gap.Across.Millimetres:0.##} x {gap.Height.Millimetres:0.0##} mm, {gap.Length.Millimetres:0.#} mm long"),
        _ => "size not given",
    };
}
