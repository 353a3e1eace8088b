namespace Circuits.Quantities;

/// <summary>What spools, their springs and their ports can be.</summary>
internal static class SpoolRanges
{
    /// <summary>Travel of a spool.</summary>
    public static PlausibleRange Travel { get; } = new(
        Dimension.Length, new(0.05, 100), "no port opens over less, and no bore is long enough for more", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 40),
        WhyUsual = "spools travel some 1 to 15 mm",
    };

    /// <summary>Overlap or underlap of a spool's lands.</summary>
    public static PlausibleRange Lap { get; } = new(
        Dimension.Length, new(0.001, 50), "nobody grinds finer, and no land is longer", PlausibleRange.Judgement)
    {
        Usual = new(0.005, 10),
        WhyUsual = "lands lap their ports by some 0.1 to 2 mm",
    };

    /// <summary>Open area of a port.</summary>
    public static PlausibleRange Port { get; } = new(
        Dimension.Area, new(0.01, 5000), "a smaller port passes nothing that could be measured, and no bore has a larger one", PlausibleRange.Judgement)
    {
        Usual = new(0.2, 500),
        WhyUsual = "ports of spools have some 10 to 100 mm2, those of solenoids some 1 to 10 mm2",
    };

    /// <summary>Area of a land that pressure acts on.</summary>
    public static PlausibleRange Land { get; } = new(
        Dimension.Area, new(0.5, 10_000), "no spool is thinner or thicker", PlausibleRange.Judgement)
    {
        Usual = new(5, 2000),
        WhyUsual = "a spool of 8 mm has 50 mm2, one of 40 mm has 1257 mm2",
    };

    /// <summary>A spool's spring force at rest.</summary>
    public static PlausibleRange Spring { get; } = new(
        Dimension.Force, new(0, 10_000), "no spool has room for a stronger spring", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.2, 800),
        WhyUsual = "springs of spools press with some 5 to 150 N",
    };

    /// <summary>Rate of a spool's spring.</summary>
    public static PlausibleRange Rate { get; } = new(
        Dimension.SpringRate, new(0, 5000), "no wire winds to a stiffer spring of that size", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.02, 100),
        WhyUsual = "springs of spools have some 0.3 to 10 N/mm",
    };

    /// <summary>Rate of a regulator's spring: it always has one.</summary>
    public static PlausibleRange RegulatorRate { get; } = Rate with { ZeroToo = false, Possible = new(0.001, 5000), Why = "a regulator's spring has a rate, and no wire winds to a softer or stiffer one" };

    /// <summary>Pressure that a regulator's spring alone sets.</summary>
    public static PlausibleRange SetPressure { get; } = new(
        Dimension.Pressure, new(0, 10_000), "no regulator of a transmission holds more", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(1, 3000),
        WhyUsual = "line pressure of automatic transmissions lies between some 300 and 2500 kPa",
    };

    /// <summary>Pressure set by pressure of signal.</summary>
    public static PlausibleRange Ratio { get; } = new(
        null, new(0.001, 1000), "no two lands differ as much", PlausibleRange.Judgement)
    {
        EitherSign = true,
        Usual = new(0.02, 20),
        WhyUsual = "lands that weigh against one another differ by some 0.2 to 5 times",
    };
}
