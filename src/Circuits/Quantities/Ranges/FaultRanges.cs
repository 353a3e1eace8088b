namespace Circuits.Quantities;

/// <summary>What the settings of faults and tests can be.</summary>
internal static class FaultRanges
{
    /// <summary>How likely a fault is against others.</summary>
    public static PlausibleRange Weight { get; } = new(
        null, new(0, 1_000_000), "such a weight leaves nothing to choose; 0 leaves the fault out", PlausibleRange.Judgement)
    {
        ZeroToo = true,
    };

    /// <summary>How near passages lie that leak into one another.</summary>
    public static PlausibleRange Near { get; } = new(
        Dimension.Length, new(0.1, 3000), "no wall is thinner, and no valve body measures 3 m", PlausibleRange.Judgement)
    {
        Usual = new(1, 200),
        WhyUsual = "walls between tracks measure some 3 to 10 mm",
    };

    /// <summary>What is left open by a fault.</summary>
    public static PlausibleRange Leak { get; } = OpeningRanges.Area;

    /// <summary>Diameter of a worn hole over that of a sound one.</summary>
    public static PlausibleRange Wear { get; } = new(
        null, new(1.01, 10), "it is how many times its diameter a worn hole has: more than once", PlausibleRange.Judgement)
    {
        Usual = new(1.05, 3),
        WhyUsual = "worn holes have some 1.2 to 2 times their diameter",
    };

    /// <summary>What a test costs.</summary>
    public static PlausibleRange Cost { get; } = new(
        null, new(0.001, 1_000_000), "a test costs something, and nobody would pay more", PlausibleRange.Judgement);
}
