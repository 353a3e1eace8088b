namespace Circuits.Quantities;

/// <summary>What balls can measure.</summary>
internal static class BallRanges
{
    /// <summary>Diameter.</summary>
    public static PlausibleRange Diameter { get; } = new(
        Dimension.Length, new(0.5, 30), "no ball of a transmission is smaller or larger", PlausibleRange.Judgement)
    {
        Usual = new(2, 16),
        WhyUsual = "check balls measure some 5 to 10 mm",
    };

    /// <summary>How far one lifts from its seat.</summary>
    public static PlausibleRange Lift { get; } = new(
        Dimension.Length, new(0.01, 30), "one that lifts less is stuck, and no pocket is deeper", PlausibleRange.Judgement)
    {
        Usual = new(0.2, 15),
        WhyUsual = "pockets leave a ball some 1 to 5 mm",
    };
}
