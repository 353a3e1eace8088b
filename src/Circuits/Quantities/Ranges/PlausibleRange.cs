using System.Globalization;

namespace Circuits.Quantities;

/// <summary>From one number to another, both included.</summary>
/// <param name="Least">The least.</param>
/// <param name="Most">The most.</param>
public readonly record struct Span(double Least, double Most);

/// <summary>
/// Which numbers make sense for one quantity of the language. Beyond what is possible stands no real part, and the laws of flow are not meant for it: an error.
/// Beyond what is usual stands a slip of the unit or the point more often than a part: a warning.
/// </summary>
/// <param name="Dimension">What it measures; null for a plain number.</param>
/// <param name="Possible">What can be, in base units.</param>
/// <param name="Why">What ends there, in a clause.</param>
/// <param name="Source">Where the ends come from; <see cref="Practice"/> or <see cref="Judgement"/> where nobody wrote them down.</param>
public sealed record PlausibleRange(Dimension? Dimension, Span Possible, string Why, string Source)
{
    /// <summary>What the trade knows, without a source.</summary>
    public const string Practice = "common practice, no source";

    /// <summary>Our own judgement: wide enough for any part, and within what the solvers have been tried at.</summary>
    public const string Judgement = "judgement";

    /// <summary>What is usual, in base units; null where all that is possible is.</summary>
    public Span? Usual { get; init; }

    /// <summary>What is usual, in a clause: <c>check balls measure some 5 to 10 mm</c>. Empty where <see cref="Usual"/> is null.</summary>
    public string WhyUsual { get; init; } = "";

    /// <summary>Whether 0 is usual too: it stands for none.</summary>
    public bool ZeroToo { get; init; }

    /// <summary>Whether the range is one of magnitudes, and the number may be negative.</summary>
    public bool EitherSign { get; init; }

    /// <summary>Whether the number must be whole.</summary>
    public bool Whole { get; init; }

    /// <summary>Whether a part could have it.</summary>
    /// <param name="value">In base units.</param>
    public bool IsPossible(double value) => Holds(Possible, value);

    /// <summary>Whether nobody would look twice at it.</summary>
    /// <param name="value">In base units.</param>
    public bool IsUsual(double value) => Usual is not { } usual || (ZeroToo && value == 0) || Holds(usual, value);

    /// <summary>What a value must be that is none of these: <c>from 0.05 to 60 mm</c>, <c>more than 0</c>.</summary>
    /// <param name="value">The value in base units; it is not possible.</param>
    /// <param name="unit">The unit to say it in; null for the base unit.</param>
    public string Must(double value, MeasureUnit? unit = null)
    {
        if (IsOfWrongSign(value)) return EitherSign ? "other than 0" : Possible.Least == 0 ? "0 or more" : "more than 0";
        return $"from {Text(Possible, unit)}{(EitherSign && Possible.Least > 0 ? ", or as much below 0" : "")}";
    }

    /// <summary>Why a value is not possible, behind a colon: <c>: no sheet has room for more</c>; empty where its sign alone says it.</summary>
    /// <param name="value">The value in base units; it is not possible.</param>
    public string Reason(double value) => IsOfWrongSign(value) ? "" : $": {Why}";

    /// <summary>A span with its unit: <c>0.05 to 60 mm</c>.</summary>
    /// <param name="span">The span, of this range.</param>
    /// <param name="unit">The unit to say it in; null for the base unit.</param>
    public string Text(Span span, MeasureUnit? unit = null)
    {
        var least = EitherSign && span.Least == 0 ? -span.Most : span.Least;
        if (unit is null && Dimension == Quantities.Dimension.Fraction) return $"{Number(least)} to {Number(span.Most)} ({Number(100 * least)} to {Number(100 * span.Most)} %)";
        unit ??= Dimension is { } dimension ? MeasureUnit.All.First(known => known.Dimension == dimension) : null;
        return unit is null ? $"{Number(least)} to {Number(span.Most)}" : $"{Number(unit.FromBase(least))} to {Number(unit.FromBase(span.Most))} {unit.Symbol}";
    }

    /// <summary>The range in words: <c>0.05 to 60 mm, usually 0.3 to 25 mm</c>.</summary>
    public override string ToString() => $"{Text(Possible)}{(Usual is { } usual ? $", usually {Text(usual)}" : "")}{(EitherSign && Possible.Least > 0 ? ", or as much below 0" : "")}";

    private bool IsOfWrongSign(double value) => (value == 0 && Possible.Least > 0) || (value < 0 && !EitherSign && Possible.Least >= 0);

    private bool Holds(Span span, double value)
    {
        var size = EitherSign ? Math.Abs(value) : value;

        // Not a number holds nowhere.
        return size >= span.Least && size <= span.Most;
    }

    /// <summary>To four digits that count.</summary>
    private static string Number(double value)
    {
        if (value == 0) return "0";
        var digits = Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 9);
        return Math.Round(value, digits).ToString("0.#########", CultureInfo.InvariantCulture);
    }
}
