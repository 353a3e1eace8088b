using System.Globalization;

namespace Circuits.Quantities;

/// <summary>What is wrong with a size as written.</summary>
public enum QuantityProblem
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It does not begin with a number.</summary>
    NotANumber,

    /// <summary>A comma stands where the decimal point belongs.</summary>
    DecimalComma,

    /// <summary>The number is infinite, or no number at all.</summary>
    NotFinite,

    /// <summary>The number has no unit.</summary>
    NoUnit,

    /// <summary>The unit is not known.</summary>
    UnknownUnit,

    /// <summary>There is no number drill of that number.</summary>
    UnknownDrill,
}

/// <summary>A size as a circuit file writes it: a number and a unit, or a number drill.</summary>
/// <param name="Problem">What is wrong with it.</param>
/// <param name="Number">The number as written; 0 unless it could be read.</param>
/// <param name="Unit">The unit, or null when it has none or its unit is not known.</param>
/// <param name="UnitText">The unit as written; empty when there is none.</param>
public readonly record struct QuantityText(QuantityProblem Problem, double Number, MeasureUnit? Unit, string UnitText)
{
    /// <summary>The value in base units of its dimension; of a bare number, the number.</summary>
    public double Value => Unit?.ToBase(Number) ?? Number;

    /// <summary>Reads a size. The decimal point is a point in every culture.</summary>
    /// <param name="text">The text: <c>2.1 mm</c>, <c>#45</c>.</param>
    public static QuantityText Parse(ReadOnlySpan<char> text)
    {
        text = text.Trim(' ');
        if (text.StartsWith('#')) return ParseDrill(text[1..]);

        var length = NumberLength(text);
        var rest = text[length..].TrimStart(' ');
        if (length == 0)
            return new(IsInfinityWord(text) ? QuantityProblem.NotFinite : QuantityProblem.NotANumber, 0, null, "");
        var number = double.Parse(text[..length], NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number)) return new(QuantityProblem.NotFinite, 0, null, "");
        if (rest.IsEmpty) return new(QuantityProblem.NoUnit, number, null, "");
        if (rest[0] == ',' && rest.Length > 1 && char.IsAsciiDigit(rest[1])) return new(QuantityProblem.DecimalComma, 0, null, "");
        var unit = MeasureUnit.Find(rest);
        return unit is null
            ? new(QuantityProblem.UnknownUnit, number, null, rest.ToString())
            : new(QuantityProblem.None, number, unit, unit.Symbol);
    }

    private static QuantityText ParseDrill(ReadOnlySpan<char> digits) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && NumberDrill.Diameter(number) is { } diameter
            ? new(QuantityProblem.None, diameter.Millimetres, MeasureUnit.Find("mm"), "mm")
            : new(QuantityProblem.UnknownDrill, 0, null, "");

    /// <summary>How many characters at the start of the text are a number: sign, digits, point, exponent.</summary>
    private static int NumberLength(ReadOnlySpan<char> text)
    {
        var at = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        var whole = Digits(text, at);
        at += whole;
        var part = 0;
        if (at < text.Length && text[at] == '.')
        {
            part = Digits(text, at + 1);
            at += 1 + part;
        }

        if (whole + part == 0) return 0;
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            var sign = at + 1 < text.Length && text[at + 1] is '+' or '-' ? 1 : 0;
            var power = Digits(text, at + 1 + sign);
            if (power > 0) at += 1 + sign + power;
        }

        return at;
    }

    private static int Digits(ReadOnlySpan<char> text, int from)
    {
        var at = from;
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return at - from;
    }

    private static bool IsInfinityWord(ReadOnlySpan<char> text)
    {
        text = text.TrimStart("+-.");
        return text.StartsWith("inf", StringComparison.OrdinalIgnoreCase) || text.StartsWith("nan", StringComparison.OrdinalIgnoreCase);
    }
}
