using System.Globalization;
using System.Text.RegularExpressions;

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
public static partial class Measures
{
    /// <summary>Kilopascals in one pound per square inch: lbf = 4.4482216152605 N, in = 25.4 mm, both exact by definition.</summary>
    public const double KilopascalsPerPsi = 4.4482216152605 / (25.4 * 25.4) * 1000;

    private const double MillimetresPerInch = 25.4;

    private const double SquareMillimetresPerSquareInch = MillimetresPerInch * MillimetresPerInch;

    /// <summary>A pressure: <c>620 kPa</c> or <c>90 psi</c>.</summary>
    /// <param name="kilopascals">The pressure in kilopascals.</param>
    /// <param name="units">The units to use.</param>
    public static string Pressure(double kilopascals, UnitSystem units) =>
        units == UnitSystem.Si ? $"{Number(kilopascals, "0")} kPa" : Shop(kilopascals, "kPa");

    /// <summary>A pressure without its unit, for a table that names the unit once.</summary>
    /// <param name="kilopascals">The pressure in kilopascals.</param>
    /// <param name="units">The units to use.</param>
    public static string PressureNumber(double kilopascals, UnitSystem units) =>
        units == UnitSystem.Si ? Number(kilopascals, "0") : ShopNumber(kilopascals, "kPa");

    /// <summary>The unit of such a table: <c>kPa</c> or <c>psi</c>.</summary>
    /// <param name="units">The units to use.</param>
    public static string PressureUnit(UnitSystem units) => units == UnitSystem.Si ? "kPa" : "psi";

    /// <summary>A length: <c>2.1 mm</c> or <c>0.0827 in</c>.</summary>
    /// <param name="millimetres">The length in millimetres.</param>
    /// <param name="units">The units to use.</param>
    public static string Length(double millimetres, UnitSystem units) =>
        units == UnitSystem.Si ? $"{Number(millimetres, "0.##")} mm" : Shop(millimetres, "mm");

    /// <summary>A sentence that holds quantities in SI units, with those quantities in the units asked for.</summary>
    /// <remarks>Findings and positions are sentences already; a reader who asked for psi must not meet both units on one page.</remarks>
    /// <param name="text">The sentence.</param>
    /// <param name="units">The units to use.</param>
    public static string Restate(string text, UnitSystem units) => units == UnitSystem.Si ? text : SiQuantity().Replace(text, match =>
    {
        var unit = match.Groups["unit"].Value;
        var quantity = Shop(Value("value"), unit);
        return match.Groups["first"].Success ? $"{ShopNumber(Value("first"), unit)} {match.Groups["word"].Value} {quantity}" : quantity;

        double Value(string group) => double.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);
    });

    private static string Shop(double value, string unit) =>
        $"{ShopNumber(value, unit)} {unit switch { "kPa" => "psi", "mm2" => "in2", _ => "in" }}";

    private static string ShopNumber(double value, string unit) => unit switch
    {
        "kPa" => Number(value / KilopascalsPerPsi, "0"),
        "mm2" => Number(value / SquareMillimetresPerSquareInch, "0.0000"),
        _ => Number(value / MillimetresPerInch, "0.0000"),
    };

    private static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    // One quantity, or two numbers that share a unit: `4 x 14 mm`, `285 of 600 kPa`.
    [GeneratedRegex(
        @"(?<![\w.@])((?<first>\d+(\.\d+)?) (?<word>x|of|instead of) )?(?<value>\d+(\.\d+)?) (?<unit>kPa|mm2|mm)(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex SiQuantity();
}
