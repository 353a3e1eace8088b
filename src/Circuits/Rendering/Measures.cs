using System.Globalization;
using Circuits.Quantities;

namespace Circuits.Rendering;

/// <summary>Which units text uses. JSON is always in SI units, named in its fields.</summary>
public enum UnitSystem
{
    /// <summary>Kilopascals, millimetres, square millimetres.</summary>
    Si,

    /// <summary>Pounds per square inch, inches, square inches.</summary>
    Shop,
}

/// <summary>Writes quantities for people, in the units that they asked for.</summary>
public static class Measures
{
    private const double MillimetresPerInch = 25.4;

    private const double SquareMillimetresPerSquareInch = MillimetresPerInch * MillimetresPerInch;

    /// <summary>A pressure: <c>620 kPa</c> or <c>90 psi</c>.</summary>
    /// <param name="kilopascals">The pressure in kilopascals.</param>
    /// <param name="units">The units to use.</param>
    public static string Pressure(double kilopascals, UnitSystem units) =>
        Of(new Quantity(Dimension.Pressure, kilopascals), units);

    /// <summary>A pressure without its unit, for a table that names the unit once.</summary>
    /// <param name="kilopascals">The pressure in kilopascals.</param>
    /// <param name="units">The units to use.</param>
    public static string PressureNumber(double kilopascals, UnitSystem units) =>
        Number(new Quantity(Dimension.Pressure, kilopascals), units);

    /// <summary>The unit of such a table: <c>kPa</c> or <c>psi</c>.</summary>
    /// <param name="units">The units to use.</param>
    public static string PressureUnit(UnitSystem units) => UnitOf(Dimension.Pressure, units);

    /// <summary>A temperature: <c>90 degC</c> or <c>194 degF</c>.</summary>
    /// <param name="celsius">The temperature in degrees Celsius.</param>
    /// <param name="units">The units to use.</param>
    public static string Temperature(double celsius, UnitSystem units) =>
        Of(new Quantity(Dimension.Temperature, celsius), units);

    /// <summary>A torque: <c>100 Nm</c> or <c>74 lbf.ft</c>.</summary>
    /// <param name="newtonMetres">The torque in newton metres.</param>
    /// <param name="units">The units to use.</param>
    public static string Torque(double newtonMetres, UnitSystem units) =>
        Of(new Quantity(Dimension.Torque, newtonMetres), units);

    /// <summary>A torque without its unit, for a table that names the unit once.</summary>
    /// <param name="newtonMetres">The torque in newton metres.</param>
    /// <param name="units">The units to use.</param>
    public static string TorqueNumber(double newtonMetres, UnitSystem units) =>
        Number(new Quantity(Dimension.Torque, newtonMetres), units);

    /// <summary>A length: <c>2.1 mm</c> or <c>0.0827 in</c>.</summary>
    /// <param name="millimetres">The length in millimetres.</param>
    /// <param name="units">The units to use.</param>
    public static string Length(double millimetres, UnitSystem units) =>
        Of(new Quantity(Dimension.Length, millimetres), units);

    /// <summary>A quantity with its unit: <c>620 kPa</c> or <c>90 psi</c>.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="units">The units to use.</param>
    public static string Of(Quantity quantity, UnitSystem units) => UnitOf(quantity.Dimension, units) is { Length: > 0 } unit
        ? $"{Number(quantity, units)} {unit}"
        : Number(quantity, units);

    /// <summary>What a plot draws of a quantity: its value in the units asked for, not rounded.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="units">The units to use.</param>
    public static double Value(Quantity quantity, UnitSystem units) =>
        units == UnitSystem.Shop && ShopUnit(quantity.Dimension) is { } shop ? MeasureUnit.Find(shop.Unit)!.FromBase(quantity.Value) : quantity.Value;

    /// <summary>A quantity without its unit.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="units">The units to use.</param>
    public static string Number(Quantity quantity, UnitSystem units)
    {
        var (dimension, value) = (quantity.Dimension, quantity.Value);
        if (units == UnitSystem.Shop && ShopUnit(dimension) is { } shop) return Number(Value(quantity, units), shop.Format);
        return dimension == Dimension.Fraction ? Number(value * 100, "0.#") : Number(value, quantity.Step switch
        {
            1 => "0",
            0.1 => "0.#",
            0.01 => "0.##",
            0.001 => "0.###",
            _ => "0.####",
        });
    }

    /// <summary>The unit that a dimension is told in; empty for none.</summary>
    /// <param name="dimension">The dimension.</param>
    /// <param name="units">The units to use.</param>
    public static string UnitOf(Dimension dimension, UnitSystem units) => units == UnitSystem.Shop && ShopUnit(dimension) is { } shop ? shop.Unit : dimension switch
    {
        Dimension.Length => "mm",
        Dimension.Area => "mm2",
        Dimension.Pressure => "kPa",
        Dimension.Force => "N",
        Dimension.SpringRate => "N/mm",
        Dimension.Volume => "mL",
        Dimension.Displacement => "mL/rev",
        Dimension.Flow => "L/min",
        Dimension.Speed => "rpm",
        Dimension.Temperature => "degC",
        Dimension.Torque => "Nm",
        Dimension.Duration => "ms",
        Dimension.Current => "A",
        Dimension.Viscosity => "mm2/s",
        Dimension.Density => "kg/m3",
        Dimension.Fraction => "%",
        _ => "",
    };

    private static (string Unit, string Format)? ShopUnit(Dimension dimension) => dimension switch
    {
        Dimension.Length => ("in", "0.0000"),
        Dimension.Area => ("in2", "0.0000"),
        Dimension.Pressure => ("psi", "0"),
        Dimension.Force => ("lbf", "0.#"),
        Dimension.SpringRate => ("lbf/in", "0.#"),
        Dimension.Volume => ("in3", "0.##"),
        Dimension.Flow => ("gpm", "0.00"),
        Dimension.Temperature => ("degF", "0"),
        Dimension.Torque => ("lbf.ft", "0"),
        _ => null,
    };

    private static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
