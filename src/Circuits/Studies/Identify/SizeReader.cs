using System.Globalization;
using System.Text.RegularExpressions;
using Circuits.Quantities;

namespace Circuits.Studies.Identify;

/// <summary>Reads a measured size: <c>5.0 mm</c>, <c>0.083 in</c>, <c>13/64 in</c>, <c>#45</c>, <c>3 x 15 mm</c>.</summary>
internal static partial class SizeReader
{
    private const double MillimetresPerInch = 25.4;

    /// <summary>The size, or null with what is wrong with it.</summary>
    public static (BenchSize? Size, string? Problem) Read(string text)
    {
        text = text.Trim();
        var sides = Times().Split(text);
        if (sides.Length > 2) return (null, $"'{text}' is not a size");
        // The unit may stand once for both sides: 3 x 15 mm.
        if (sides.Length == 2 && !sides[0].Any(char.IsAsciiLetter) && !sides[0].Contains('#')) sides[0] += sides[1].TrimStart("0123456789./ ".ToCharArray());
        var lengths = new List<double>();
        foreach (var side in sides)
        {
            var (length, problem) = Length(side.Trim());
            if (length is not { } millimetres) return (null, problem);
            lengths.Add(millimetres);
        }

        lengths.Sort();
        return (new BenchSize(lengths[0], lengths.Count > 1 ? lengths[1] : null), null);
    }

    private static (double? Millimetres, string? Problem) Length(string text)
    {
        if (Fraction().Match(text) is { Success: true } fraction)
        {
            var inches = double.Parse(fraction.Groups[1].ValueSpan, CultureInfo.InvariantCulture) / double.Parse(fraction.Groups[2].ValueSpan, CultureInfo.InvariantCulture);
            return double.IsFinite(inches) ? Held(inches * MillimetresPerInch) : (null, $"'{text}' is not a size");
        }

        var read = QuantityText.Parse(text);
        return read.Problem switch
        {
            QuantityProblem.NoUnit => (null, $"'{text}' has no unit: write {text} mm, or in"),
            QuantityProblem.UnknownUnit => (null, $"'{text}': unknown unit '{read.UnitText}'; write mm or in"),
            QuantityProblem.UnknownDrill => (null, $"'{text}': there is no such number drill; they go from #{NumberDrill.First} to #{NumberDrill.Last}"),
            QuantityProblem.DecimalComma => (null, $"'{text}': write the decimal point as a point"),
            QuantityProblem.None when read.Unit!.Dimension != Dimension.Length => (null, $"'{text}' is not a length; write mm or in"),
            QuantityProblem.None => Held(read.Value),
            _ => (null, text.Length == 0 ? "the size is missing" : $"'{text}' is not a size"),
        };

        (double? Millimetres, string? Problem) Held(double millimetres) => OpeningRanges.Measured.IsPossible(millimetres)
            ? (millimetres, null)
            : (null, $"'{text}' is not {OpeningRanges.Measured.Must(millimetres)}{OpeningRanges.Measured.Reason(millimetres)}");
    }

    [GeneratedRegex(@"\s*[xX\u00D7]\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Times();

    [GeneratedRegex(@"^([0-9]{1,4})/([0-9]{1,4}) ?(?:in|"")$", RegexOptions.CultureInvariant)]
    private static partial Regex Fraction();
}
