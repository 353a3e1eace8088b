namespace Circuits.Quantities;

/// <summary>What clutches, brakes, servos and their drums can be.</summary>
internal static class ClutchRanges
{
    /// <summary>Piston area, on either side.</summary>
    public static PlausibleRange Area { get; } = new(
        Dimension.Area, new(10, 200_000), "no piston is smaller, and no drum has room for a larger one", PlausibleRange.Judgement)
    {
        Usual = new(200, 60_000),
        WhyUsual = "pistons have some 1500 to 25000 mm2",
    };

    /// <summary>Return spring force at the start of the stroke.</summary>
    public static PlausibleRange ReturnSpring { get; } = new(
        Dimension.Force, new(0, 50_000), "nothing has room for a stronger spring", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(1, 10_000),
        WhyUsual = "return springs press with some 200 to 3000 N",
    };

    /// <summary>Rate of a return spring.</summary>
    public static PlausibleRange Rate { get; } = new(
        Dimension.SpringRate, new(0, 50_000), "a stiffer spring would not let the piston move", PlausibleRange.Judgement)
    {
        ZeroToo = true,
        Usual = new(0.05, 3000),
        WhyUsual = "return springs have some 10 to 300 N/mm",
    };

    /// <summary>Stroke until the plates touch.</summary>
    public static PlausibleRange Stroke { get; } = new(
        Dimension.Length, new(0.02, 150), "plates with less would drag for ever, and no piston has room for more", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 50),
        WhyUsual = "clutches have some 1 to 4 mm, servos of bands some 3 to 20 mm",
    };

    /// <summary>Volume until the plates touch.</summary>
    public static PlausibleRange Fill { get; } = new(
        Dimension.Volume, new(0.01, 5000), "no chamber holds less, or more", PlausibleRange.Judgement)
    {
        Usual = new(0.5, 400),
        WhyUsual = "clutches take some 5 to 80 mL",
    };

    /// <summary>Stiffness of plates that touch.</summary>
    public static PlausibleRange PackRate { get; } = new(
        Dimension.SpringRate, new(10, 10_000_000), "plates that yield more never hold, and steel of that size yields more than the stiffest", PlausibleRange.Judgement)
    {
        Usual = new(300, 1_000_000),
        WhyUsual = "a pack yields some 0.2 mm under full pressure",
    };

    /// <summary>Friction faces.</summary>
    public static PlausibleRange Plates { get; } = new(
        null, new(1, 100), "a clutch has a face, and no drum has room for more", PlausibleRange.Judgement)
    {
        Whole = true,
        Usual = new(1, 30),
        WhyUsual = "clutches have some 2 to 16 faces",
    };

    /// <summary>Coefficient of friction; for a band with what its wrap and lever make of it.</summary>
    public static PlausibleRange Friction { get; } = new(
        null, new(0.001, 100), "nothing is more slippery, and no band wraps tighter", PlausibleRange.Judgement)
    {
        Usual = new(0.02, 20),
        WhyUsual = "linings in oil have some 0.08 to 0.18, a band with its wrap and lever some 0.5 to 5",
    };

    /// <summary>Mean friction radius.</summary>
    public static PlausibleRange Radius { get; } = new(
        Dimension.Length, new(3, 600), "no shaft is thinner, and no case wider", PlausibleRange.Judgement)
    {
        Usual = new(15, 250),
        WhyUsual = "plates have a mean radius of some 40 to 110 mm",
    };

    /// <summary>A radius of a drum.</summary>
    public static PlausibleRange DrumRadius { get; } = new(
        Dimension.Length, new(1, 600), "no shaft is thinner, and no case wider", PlausibleRange.Judgement)
    {
        Usual = new(5, 250),
        WhyUsual = "drums measure some 60 to 250 mm across",
    };
}
