using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>What to say of a shape, for the answers to "through what".</summary>
internal static class SizeText
{
    private static readonly Phrase Open = Phrase.Of($"open");
    private static readonly Phrase NotGiven = Phrase.Of($"size not given");

    public static Phrase Of(Shape? shape) => shape switch
    {
        null => Open,
        Shape.Hole { Depth: { } depth } hole => Phrase.Of($"hole {hole.Diameter}, {depth} deep"),
        Shape.Hole hole => Phrase.Of($"hole {hole.Diameter}"),
        Shape.Slot slot => Phrase.Of($"slot {slot.Width:bare} x {slot.Length}"),
        Shape.Cutout cutout => Phrase.Of($"{cutout.Size}"),
        Shape.RoundGap gap => Phrase.Of($"gap {gap.Height} around {gap.Diameter}, {gap.Length} long"),
        Shape.FlatGap gap => Phrase.Of($"gap {gap.Across:bare} x {gap.Height}, {gap.Length} long"),
        _ => NotGiven,
    };
}
