namespace Circuits.Quantities;

/// <summary>What solenoids command.</summary>
internal static class SolenoidRanges
{
    /// <summary>Current through a solenoid.</summary>
    public static PlausibleRange Current { get; } = new(
        Dimension.Current, new(0, 30), "no winding bears more", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.001, 5),
        WhyUsual = "pressure solenoids work with some 0 to 1.5 A",
    };

    /// <summary>Pressure that is commanded, or fixed from outside.</summary>
    public static PlausibleRange Pressure { get; } = new(
        Dimension.Pressure, new(0, 30_000), "no line of a transmission bears more", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.5, 3000),
        WhyUsual = "line pressure of automatic transmissions lies between some 300 and 2500 kPa, and signals lie below it",
    };
}

/// <summary>What passages can measure.</summary>
internal static class PassageRanges
{
    /// <summary>Length of a passage.</summary>
    public static PlausibleRange Length { get; } = new(
        Dimension.Length, new(0.5, 10_000), "no pocket is shorter, and no line to a cooler and back longer", PlausibleRange.Judgement)
    {
        Usual = new(3, 3000),
        WhyUsual = "tracks of a valve body measure some 20 to 400 mm",
    };

    /// <summary>Cross-section of a passage.</summary>
    public static PlausibleRange Section { get; } = new(
        Dimension.Area, new(0.1, 5000), "no track is cast narrower, and no casting has room for a wider one", PlausibleRange.Judgement)
    {
        Usual = new(3, 1500),
        WhyUsual = "tracks have some 20 to 150 mm2",
    };

    /// <summary>Oil in a passage.</summary>
    public static PlausibleRange Volume { get; } = new(
        Dimension.Volume, new(0.001, 10_000), "no pocket holds less, and no transmission more oil", PlausibleRange.Judgement)
    {
        Usual = new(0.02, 1000),
        WhyUsual = "tracks hold some 0.5 to 30 mL",
    };
}

/// <summary>What accumulators can be.</summary>
internal static class AccumulatorRanges
{
    /// <summary>Piston area.</summary>
    public static PlausibleRange Area { get; } = new(
        Dimension.Area, new(1, 50_000), "no piston is smaller or larger", PlausibleRange.Judgement)
    {
        Usual = new(30, 10_000),
        WhyUsual = "pistons of accumulators measure some 20 to 50 mm across: 300 to 2000 mm2",
    };

    /// <summary>Spring force at the start of the stroke.</summary>
    public static PlausibleRange Spring { get; } = ClutchRanges.ReturnSpring with { WhyUsual = "springs of accumulators press with some 20 to 800 N" };

    /// <summary>Spring rate.</summary>
    public static PlausibleRange Rate { get; } = ClutchRanges.Rate with { WhyUsual = "springs of accumulators have some 1 to 50 N/mm" };

    /// <summary>Full stroke.</summary>
    public static PlausibleRange Stroke { get; } = new(
        Dimension.Length, new(0.05, 300), "a shorter stroke takes up nothing, and no bore is longer", PlausibleRange.Judgement)
    {
        Usual = new(0.5, 100),
        WhyUsual = "accumulators have a stroke of some 5 to 40 mm",
    };
}

/// <summary>Where locations can lie.</summary>
internal static class JointRanges
{
    /// <summary>A coordinate, in millimetres.</summary>
    public static PlausibleRange Coordinate { get; } = new(
        null, new(0, 3000), "coordinates are millimetres, and no valve body measures 3 m", PlausibleRange.Judgement)
    {
        EitherSign = true,
        Usual = new(0, 1000),
        WhyUsual = "valve bodies measure some 150 to 500 mm",
    };
}

/// <summary>What screens and filters can be.</summary>
internal static class ScreenRanges
{
    /// <summary>The share of a mesh that is stopped up.</summary>
    public static PlausibleRange Clogged { get; } = new(
        Dimension.Fraction, new(0, 1), "a mesh is clean at the least and shut at the most", PlausibleRange.Judgement)
    {
        ZeroToo = true,
    };

    /// <summary>The difference across a mesh at which its bypass opens.</summary>
    public static PlausibleRange OpensAt { get; } = new(
        Dimension.Pressure, new(1, 5000), "a bypass that opens at less is a hole, and no mesh bears more", PlausibleRange.Judgement)
    {
        Usual = new(5, 1000),
        WhyUsual = "bypasses of filters open at some 20 to 200 kPa",
    };
}
