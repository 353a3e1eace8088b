using System.Collections.Immutable;

namespace Circuits.Quantities;

/// <summary>A unit of measure that circuit files may use.</summary>
/// <param name="Symbol">How files write it; capitals matter.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Base units in one of it.</param>
/// <param name="Offset">Base units at its zero; not 0 for temperatures alone.</param>
/// <remarks>Factors of inch and pound units are exact by definition (international yard and pound, standard gravity).</remarks>
public sealed record MeasureUnit(string Symbol, Dimension Dimension, double Factor, double Offset = 0)
{
    private const double Inch = 25.4;
    private const double PoundForce = 4.4482216152605;

    /// <summary>Every unit, grouped by dimension, base units first.</summary>
    public static ImmutableArray<MeasureUnit> All { get; } =
    [
        new("mm", Dimension.Length, 1),
        new("cm", Dimension.Length, 10),
        new("m", Dimension.Length, 1000),
        new("um", Dimension.Length, 0.001),
        new("in", Dimension.Length, Inch),
        new("mm2", Dimension.Area, 1),
        new("cm2", Dimension.Area, 100),
        new("in2", Dimension.Area, Inch * Inch),
        new("kPa", Dimension.Pressure, 1),
        new("MPa", Dimension.Pressure, 1000),
        new("bar", Dimension.Pressure, 100),
        new("psi", Dimension.Pressure, 1000 * PoundForce / (Inch * Inch)),
        new("Pa", Dimension.Pressure, 0.001),
        new("N", Dimension.Force, 1),
        new("kN", Dimension.Force, 1000),
        new("lbf", Dimension.Force, PoundForce),
        new("N/mm", Dimension.SpringRate, 1),
        new("N/m", Dimension.SpringRate, 0.001),
        new("lbf/in", Dimension.SpringRate, PoundForce / Inch),
        new("mL", Dimension.Volume, 1),
        new("cm3", Dimension.Volume, 1),
        new("L", Dimension.Volume, 1000),
        new("cc", Dimension.Volume, 1),
        new("in3", Dimension.Volume, Inch * Inch * Inch / 1000),
        new("mL/rev", Dimension.Displacement, 1),
        new("cm3/rev", Dimension.Displacement, 1),
        new("L/min", Dimension.Flow, 1),
        new("cm3/s", Dimension.Flow, 0.06),
        new("gpm", Dimension.Flow, 231 * Inch * Inch * Inch / 1e6),
        new("rpm", Dimension.Speed, 1),
        new("degC", Dimension.Temperature, 1),
        new("degF", Dimension.Temperature, 5.0 / 9, -32 * 5.0 / 9),
        new("K", Dimension.Temperature, 1, AbsoluteZero),
        new("Nm", Dimension.Torque, 1),
        new("lbf.ft", Dimension.Torque, PoundForce * 12 * Inch / 1000),
        new("ms", Dimension.Duration, 1),
        new("s", Dimension.Duration, 1000),
        new("A", Dimension.Current, 1),
        new("mA", Dimension.Current, 0.001),
        new("mm2/s", Dimension.Viscosity, 1),
        new("cSt", Dimension.Viscosity, 1),
        new("kg/m3", Dimension.Density, 1),
        new("%", Dimension.Fraction, 0.01),
    ];

    /// <summary>Absolute zero in degrees Celsius.</summary>
    public const double AbsoluteZero = -273.15;

    /// <summary>The unit of that symbol, or null.</summary>
    /// <param name="symbol">The symbol, capitals as in <see cref="Symbol"/>.</param>
    public static MeasureUnit? Find(ReadOnlySpan<char> symbol)
    {
        // They are few; making a dictionary of them takes longer than most files need it.
        foreach (var unit in All)
        {
            if (symbol.SequenceEqual(unit.Symbol)) return unit;
        }

        return null;
    }

    /// <summary>A value of this unit in base units.</summary>
    /// <param name="value">The value.</param>
    public double ToBase(double value) => value * Factor + Offset;

    /// <summary>A value in base units in this unit.</summary>
    /// <param name="value">The value in base units.</param>
    public double FromBase(double value) => (value - Offset) / Factor;
}
