namespace Circuits.Quantities;

/// <summary>A size with a tolerance, as a circuit file writes it: <c>2.10 +- 0.05 mm</c>, <c>#45 +- 0.02 mm</c>, <c>40 N +- 10 %</c>.</summary>
/// <param name="Size">The size.</param>
/// <param name="Tolerance">What it may be more or less; null when it carries none.</param>
public readonly record struct ToleranceText(QuantityText Size, QuantityText? Tolerance)
{
    /// <summary>What it may be more or less, in base units of the size; NaN when that is no tolerance of such a size, 0 when it carries none.</summary>
    public double Plus
    {
        get
        {
            if (Tolerance is not { } tolerance) return 0;
            if (tolerance.Problem is not (QuantityProblem.None or QuantityProblem.NoUnit)) return double.NaN;
            var (own, unit) = (Size.Unit, tolerance.Unit);
            if (unit?.Dimension == own?.Dimension) return tolerance.Number * (unit?.Factor ?? 1);

            // Percents of a size; a temperature has no zero to take them from.
            return unit?.Dimension == Dimension.Fraction && own?.Dimension != Dimension.Temperature ? unit.Factor * tolerance.Number * Math.Abs(Size.Value) : double.NaN;
        }
    }

    /// <summary>Reads a size and its tolerance; where only one of the two has a unit, it is the other's too.</summary>
    /// <param name="text">The text.</param>
    public static ToleranceText Parse(ReadOnlySpan<char> text)
    {
        var (at, length) = text.IndexOf("+-") is var ascii and >= 0 ? (ascii, 2) : (text.IndexOf('±'), 1);
        if (at < 0) return new(QuantityText.Parse(text), null);
        var size = QuantityText.Parse(text[..at]);
        var tolerance = QuantityText.Parse(text[(at + length)..]);
        if (size.Problem == QuantityProblem.NoUnit && tolerance.Unit is { Dimension: not Dimension.Fraction } shared)
            size = new(QuantityProblem.None, size.Number, shared, shared.Symbol);
        else if (tolerance.Problem == QuantityProblem.NoUnit && size.Unit is { } own)
            tolerance = new(QuantityProblem.None, tolerance.Number, own, own.Symbol);
        return new(size, tolerance);
    }
}
