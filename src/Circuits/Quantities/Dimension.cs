namespace Circuits.Quantities;

/// <summary>What kind of quantity a size in a circuit file is.</summary>
public enum Dimension
{
    /// <summary>A length, in millimetres.</summary>
    Length,

    /// <summary>An area, in square millimetres.</summary>
    Area,

    /// <summary>A gauge pressure, in kilopascals.</summary>
    Pressure,

    /// <summary>A force, in newtons.</summary>
    Force,

    /// <summary>A spring rate, in newtons per millimetre.</summary>
    SpringRate,

    /// <summary>A volume, in millilitres.</summary>
    Volume,

    /// <summary>A pump displacement, in millilitres per revolution.</summary>
    Displacement,

    /// <summary>A flow, in litres per minute.</summary>
    Flow,

    /// <summary>A speed of rotation, in revolutions per minute.</summary>
    Speed,

    /// <summary>A temperature, in degrees Celsius.</summary>
    Temperature,

    /// <summary>A torque, in newton metres.</summary>
    Torque,

    /// <summary>A span of time, in milliseconds.</summary>
    Duration,

    /// <summary>An electric current, in amperes.</summary>
    Current,

    /// <summary>A kinematic viscosity, in square millimetres per second.</summary>
    Viscosity,

    /// <summary>A density, in kilograms per cubic metre.</summary>
    Density,

    /// <summary>A fraction of one.</summary>
    Fraction,

    /// <summary>A number that has no unit.</summary>
    Ratio,
}

/// <summary>How messages speak of dimensions.</summary>
public static class DimensionWords
{
    /// <summary>The dimension with its article: <c>a length</c>.</summary>
    /// <param name="dimension">The dimension.</param>
    public static string Name(this Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.Area => "an area",
        Dimension.Pressure => "a pressure",
        Dimension.Force => "a force",
        Dimension.SpringRate => "a spring rate",
        Dimension.Volume => "a volume",
        Dimension.Displacement => "a displacement",
        Dimension.Flow => "a flow",
        Dimension.Speed => "a speed",
        Dimension.Temperature => "a temperature",
        Dimension.Torque => "a torque",
        Dimension.Duration => "a time",
        Dimension.Current => "a current",
        Dimension.Viscosity => "a viscosity",
        Dimension.Density => "a density",
        Dimension.Ratio => "a ratio",
        _ => "a fraction",
    };

    /// <summary>Sizes of that dimension as a file would write them.</summary>
    /// <param name="dimension">The dimension.</param>
    public static string Example(this Dimension dimension) => dimension switch
    {
        Dimension.Length => "2.1 mm, 0.083 in or \"#45\"",
        Dimension.Area => "40 mm2",
        Dimension.Pressure => "620 kPa, 6.2 bar or 90 psi",
        Dimension.Force => "40 N",
        Dimension.SpringRate => "2 N/mm",
        Dimension.Volume => "38 mL",
        Dimension.Displacement => "16 mL/rev",
        Dimension.Flow => "1.5 L/min",
        Dimension.Speed => "700 rpm",
        Dimension.Temperature => "90 degC",
        Dimension.Torque => "180 Nm",
        Dimension.Duration => "300 ms",
        Dimension.Current => "0.4 A",
        Dimension.Viscosity => "32 mm2/s",
        Dimension.Density => "860 kg/m3",
        Dimension.Ratio => "2.5",
        _ => "85 % or 0.85",
    };
}
