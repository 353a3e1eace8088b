namespace Circuits.Quantities;

/// <summary>What gears, shifts and the gear train can be.</summary>
public static class GearRanges
{
    /// <summary>Input speed over output speed.</summary>
    public static PlausibleRange Ratio { get; } = new(
        null, new(0.01, 100), "no gear train of a transmission turns as far", PlausibleRange.Judgement)
    {
        EitherSign = true,
        Usual = new(0.2, 20),
        WhyUsual = "gears of automatic transmissions have ratios of some 0.5 to 6",
    };

    /// <summary>Teeth of a sun or a ring.</summary>
    internal static PlausibleRange Teeth { get; } = new(
        null, new(5, 1000), "no wheel meshes with fewer, or is cut with more", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(11, 300),
        WhyUsual = "suns have some 20 to 60 teeth, rings some 60 to 130",
    };

    /// <summary>A point in time of a shift.</summary>
    internal static PlausibleRange Time { get; } = new(
        Dimension.Duration, new(0, 60_000), "no shift takes a minute", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.1, 10_000),
        WhyUsual = "shifts take some 100 to 1500 ms",
    };

    /// <summary>Torque at the input.</summary>
    public static PlausibleRange Torque { get; } = new(
        Dimension.Torque, new(0.1, 100_000), "less does not turn the input, and no input shaft bears more", PlausibleRange.Judgement)
    {
        Usual = new(1, 5000),
        WhyUsual = "engines of cars give some 50 to 700 Nm, those of trucks up to some 3500",
    };

    /// <summary>A share of what the matched set gives.</summary>
    internal static PlausibleRange Share { get; } = new(
        Dimension.Fraction, new(0.0001, 1), "it is a share of a whole", "definition");

    /// <summary>A limit to how long something may last.</summary>
    internal static PlausibleRange Limit { get; } = new(
        Dimension.Duration, new(0.1, 60_000), "nobody feels less, and no shift takes a minute", PlausibleRange.Judgement)
    {
        Usual = new(1, 10_000),
        WhyUsual = "what a driver feels lasts some 30 to 2000 ms",
    };
}
