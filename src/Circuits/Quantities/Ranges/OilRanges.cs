namespace Circuits.Quantities;

/// <summary>What oil can be, and how the pump drives it.</summary>
public static class OilRanges
{
    /// <summary>Temperature of the oil.</summary>
    public static PlausibleRange Temperature { get; } = new(
        Dimension.Temperature, new(-60, 200), "colder oil no longer flows, and hotter oil cracks and burns", PlausibleRange.Practice)
    {
        Usual = new(-40, 160),
        WhyUsual = "oil of automatic transmissions works at some 60 to 120 degC",
    };

    /// <summary>Kinematic viscosity.</summary>
    public static PlausibleRange Viscosity { get; } = new(
        Dimension.Viscosity, new(0.3, 1_000_000), "water at 90 degC has 0.33 mm2/s, and what is thicker than the most does not flow", PlausibleRange.Judgement)
    {
        Usual = new(1.5, 50_000),
        WhyUsual = "oil of automatic transmissions has some 5 to 8 mm2/s at 100 degC and 25 to 40 at 40 degC",
    };

    /// <summary>Viscosity index.</summary>
    public static PlausibleRange ViscosityIndex { get; } = new(
        null, new(1, 500), "no oil keeps its viscosity less, or better", PlausibleRange.Judgement)
    {
        Usual = new(20, 350),
        WhyUsual = "oils have some 90 to 200",
    };

    /// <summary>Density.</summary>
    public static PlausibleRange Density { get; } = new(
        Dimension.Density, new(500, 2000), "no oil is lighter or heavier", PlausibleRange.Judgement)
    {
        Usual = new(750, 1150),
        WhyUsual = "oils have some 820 to 900 kg/m3",
    };

    /// <summary>Speed of the pump.</summary>
    public static PlausibleRange Speed { get; } = new(
        Dimension.Speed, new(1, 20_000), "a pump that turns slower gives nothing, and no engine turns faster", PlausibleRange.Judgement)
    {
        Usual = new(50, 10_000),
        WhyUsual = "engines idle at some 600 to 900 rpm and turn up to some 7000",
    };

    /// <summary>Speed of the pump, which may also stand still.</summary>
    public static PlausibleRange SpeedOrStill { get; } = Speed with { ZeroToo = true, Possible = new(0, 20_000), Why = "no engine turns faster" };

    /// <summary>What the pump gives a turn.</summary>
    public static PlausibleRange Displacement { get; } = new(
        Dimension.Displacement, new(0.05, 1000), "no pump of a transmission is smaller or larger", PlausibleRange.Judgement)
    {
        Usual = new(2, 100),
        WhyUsual = "pumps of automatic transmissions give some 8 to 30 mL/rev",
    };

    /// <summary>Volumetric efficiency of the pump.</summary>
    public static PlausibleRange Efficiency { get; } = new(
        Dimension.Fraction, new(0.01, 1), "a pump cannot give more than it takes in, and a worse one gives nothing", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 1),
        WhyUsual = "pumps in order have some 75 to 95 %",
    };

    /// <summary>What a gauge shows.</summary>
    public static PlausibleRange Gauge { get; } = new(
        Dimension.Pressure, new(-100, 20_000), "below that is less than a vacuum, and no case bears more", "a vacuum is 101.3 kPa below the air around it");

    /// <summary>Pressure at the pump: where its relief valve opens, or under which it was measured.</summary>
    public static PlausibleRange PumpPressure { get; } = new(
        Dimension.Pressure, new(10, 20_000), "a pump that gives way earlier feeds nothing, and no case bears more", PlausibleRange.Judgement)
    {
        Usual = new(200, 5000),
        WhyUsual = "relief valves of automatic transmissions open at some 1500 to 2500 kPa",
    };

    /// <summary>Pressure that a place of the unit has to have.</summary>
    public static PlausibleRange NeededPressure { get; } = new(
        Dimension.Pressure, new(0, 20_000), "no place needs a vacuum, and no case bears more", PlausibleRange.Judgement)
    {
        Usual = new(2, 5000),
        WhyUsual = "lubrication has some 20 to 150 kPa, a torque converter 200 to 900",
    };

    /// <summary>Oil that has to pass a place of the unit.</summary>
    public static PlausibleRange NeededFlow { get; } = new(
        Dimension.Flow, new(0.001, 1000), "less is a leak, and no pump of a transmission gives more", PlausibleRange.Judgement)
    {
        Usual = new(0.05, 100),
        WhyUsual = "lubrication and coolers pass some 1 to 20 L/min",
    };
}
