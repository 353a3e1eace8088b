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

    /// <summary>A pressure: <c>620 kPa</c> or <c>90 psi</c>.</summary>
    /// <param name="kilopascals">The pressure in kilopascals.</param>
    /// <param name="units">The units to use.</param>
    public static string Pressure(double kilopascals, UnitSystem units) => units == UnitSystem.Si
        ? $"{Number(kilopascals, "0")} kPa"
        : $"{Number(kilopascals / KilopascalsPerPsi, "0")} psi";

    /// <summary>A length: <c>2.1 mm</c> or <c>0.0827 in</c>.</summary>
    /// <param name="millimetres">The length in millimetres.</param>
    /// <param name="units">The units to use.</param>
    public static string Length(double millimetres, UnitSystem units) => units == UnitSystem.Si
        ? $"{Number(millimetres, "0.##")} mm"
        : $"{Inches(millimetres)} in";

    /// <summary>An area: <c>40 mm2</c> or <c>0.062 in2</c>.</summary>
    /// <param name="squareMillimetres">The area in square millimetres.</param>
    /// <param name="units">The units to use.</param>
    public static string Area(double squareMillimetres, UnitSystem units) => units == UnitSystem.Si
        ? $"{Number(squareMillimetres, "0.##")} mm2"
        : $"{Number(squareMillimetres / (MillimetresPerInch * MillimetresPerInch), "0.0000")} in2";

    /// <summary>A sentence that holds quantities in SI units, with those quantities in the units asked for.</summary>
    /// <remarks>Findings and positions are sentences already; a reader who asked for psi must not meet both units on one page.</remarks>
    /// <param name="text">The sentence.</param>
    /// <param name="units">The units to use.</param>
    public static string Restate(string text, UnitSystem units) => units == UnitSystem.Si ? text : SiQuantity().Replace(text, match =>
    {
        var value = double.Parse(match.Groups["value"].ValueSpan, CultureInfo.InvariantCulture);
        if (match.Groups["width"] is { Success: true } width)
            return $"{Inches(double.Parse(width.ValueSpan, CultureInfo.InvariantCulture))} x {Length(value, units)}";
        return match.Groups["unit"].Value switch
        {
            "kPa" => Pressure(value, units),
            "mm2" => Area(value, units),
            _ => Length(value, units),
        };
    });

    private static string Inches(double millimetres) => Number(millimetres / MillimetresPerInch, "0.0000");

    private static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    [GeneratedRegex(@"(?<![\w.@])((?<width>\d+(\.\d+)?) x (?=\S+ mm\b))?(?<value>\d+(\.\d+)?) (?<unit>kPa|mm2|mm)(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex SiQuantity();
}
