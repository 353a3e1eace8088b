namespace Circuits.Quantities;

/// <summary>How many of a kind a file may have. What is computed grows with them, with their square in places; no unit comes near.</summary>
internal static class CountLimits
{
    /// <summary>Gears of a unit. Reports hold a page of drawings a gear, some 0.6 MB each while they are written.</summary>
    public static PlausibleRange Gears { get; } = new(null, new(0, 1000), "no gearbox has as many, and a report of them would fill the memory", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(0, 50),
        WhyUsual = "automatic transmissions have some 4 to 12, with the lever's positions",
    };

    /// <summary>Sheets between two castings. Any two may lie in each other's place, so faults grow with their square.</summary>
    public static PlausibleRange Sheets { get; } = new(null, new(0, 40), "no bolt reaches through more, and any two of them may lie in each other's place", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(0, 8),
        WhyUsual = "joints have a plate and a gasket or two",
    };

    /// <summary>Clutches and brakes of a unit.</summary>
    public static PlausibleRange Clutches { get; } = new(null, new(0, 500), "no gearbox has room for as many", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(0, 30),
        WhyUsual = "automatic transmissions have some 4 to 8",
    };

    /// <summary>Timed shifts of a unit.</summary>
    public static PlausibleRange Shifts { get; } = new(null, new(0, 2000), "each is followed in time", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(0, 300),
        WhyUsual = "automatic transmissions have some 6 to 60",
    };

    /// <summary>Gauge ports of a unit.</summary>
    public static PlausibleRange Taps { get; } = new(null, new(0, 1000), "no case has room for as many", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(0, 60),
        WhyUsual = "cases have some 1 to 12",
    };
}
