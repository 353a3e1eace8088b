namespace Circuits.Quantities;

/// <summary>What holes, slots and gaps can measure.</summary>
public static class OpeningRanges
{
    /// <summary>Diameter of a round hole.</summary>
    public static PlausibleRange Hole { get; } = new(
        Dimension.Length, new(0.05, 60), "no drill makes a smaller hole, and no sheet or casting has room for a larger one", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 25),
        WhyUsual = "#80, the smallest number drill, is 0.343 mm, and orifices run from some 0.5 mm up",
    };

    /// <summary>Either side of a slot.</summary>
    public static PlausibleRange SlotSide { get; } = new(
        Dimension.Length, new(0.05, 300), "no sheet has a narrower slot, or room for a longer one", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 120),
        WhyUsual = "slots are punched some 1 to 20 mm wide",
    };

    /// <summary>Either side of a slot inside a casting, which may be a crack.</summary>
    public static PlausibleRange CrackSide { get; } = new(
        Dimension.Length, new(0.0005, 300), "a narrower crack passes nothing that could be measured, and no casting has room for a longer one", PlausibleRange.Judgement)
    {
        Usual = new(0.005, 200),
        WhyUsual = "cracks and worn lands stand open by some 0.01 to 0.2 mm",
    };

    /// <summary>Area of an opening, a restriction, a leak or a seat that is given as such.</summary>
    public static PlausibleRange Area { get; } = new(
        Dimension.Area, new(0.001, 5000), "nothing smaller passes oil that could be measured, and no sheet or casting has room for more", PlausibleRange.Judgement)
    {
        Usual = new(0.01, 1500),
        WhyUsual = "a hole of 0.3 mm has 0.07 mm2, one of 25 mm has 490 mm2",
    };

    /// <summary>How deep a hole is inside a casting, or how long a gap is along the flow.</summary>
    public static PlausibleRange Length { get; } = new(
        Dimension.Length, new(0.05, 1000), "no wall is thinner, and no valve body longer", PlausibleRange.Judgement)
    {
        Usual = new(0.3, 300),
        WhyUsual = "walls and lands measure some 1 to 60 mm",
    };

    /// <summary>Height of a gap.</summary>
    public static PlausibleRange Gap { get; } = new(
        Dimension.Length, new(0.0005, 5), "a smaller gap passes nothing that could be measured, and a larger one is a passage", PlausibleRange.Judgement)
    {
        Usual = new(0.002, 0.5),
        WhyUsual = "spools run with some 0.01 to 0.06 mm in their bores",
    };

    /// <summary>Diameter of the bore that a gap goes around.</summary>
    public static PlausibleRange Around { get; } = new(
        Dimension.Length, new(0.5, 500), "no bore or shaft of a transmission is smaller or larger", PlausibleRange.Judgement)
    {
        Usual = new(3, 300),
        WhyUsual = "spools measure some 6 to 40 mm across, sealing rings up to a drum's size",
    };

    /// <summary>Width of a flat gap across the flow.</summary>
    public static PlausibleRange Width { get; } = new(
        Dimension.Length, new(0.05, 1000), "no gap is narrower, and no valve body wider", PlausibleRange.Judgement)
    {
        Usual = new(0.5, 500),
        WhyUsual = "walls between passages are some 5 to 200 mm long",
    };

    /// <summary>What is measured at the bench: a hole, a side of a slot, or a ball.</summary>
    public static PlausibleRange Measured { get; } = new(
        Dimension.Length, new(0.01, 300), "nobody measures finer at a bench, and no sheet has a longer slot", PlausibleRange.Judgement);

    /// <summary>How far off centre a round gap is.</summary>
    public static PlausibleRange Eccentricity { get; } = new(
        Dimension.Fraction, new(1e-6, 1), "at 1 the spool touches its bore; leave the key out for one that is in the middle", "geometry");
}
