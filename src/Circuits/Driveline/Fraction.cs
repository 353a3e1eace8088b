using System.Globalization;
using System.Numerics;

namespace Circuits.Driveline;

/// <summary>
/// An exact fraction. Teeth are whole numbers, so every ratio is one, and whether two shafts are locked together
/// needs no tolerance.
/// </summary>
internal readonly struct Fraction : IEquatable<Fraction>, IComparable<Fraction>
{
    private readonly BigInteger numerator;

    // Zero stands for one, so that the default value is a sound zero.
    private readonly BigInteger denominator;

    private Fraction(BigInteger numerator, BigInteger denominator)
    {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    public static Fraction Zero => default;

    public static Fraction One => new(BigInteger.One, BigInteger.Zero);

    public bool IsZero => numerator.IsZero;

    public int Sign => numerator.Sign;

    private bool IsWhole => denominator.IsZero;

    private BigInteger Denominator => denominator.IsZero ? BigInteger.One : denominator;

    public static implicit operator Fraction(long value) => new(value, BigInteger.Zero);

    public static Fraction operator +(Fraction left, Fraction right)
    {
        if (left.IsZero) return right;
        if (right.IsZero) return left;
        if (left.IsWhole && right.IsWhole) return new Fraction(left.numerator + right.numerator, BigInteger.Zero);
        return Reduce(
            left.numerator * right.Denominator + right.numerator * left.Denominator,
            left.Denominator * right.Denominator);
    }

    public static Fraction operator -(Fraction value) => new(-value.numerator, value.denominator);

    public static Fraction operator -(Fraction left, Fraction right) => left + -right;

    public static Fraction operator *(Fraction left, Fraction right)
    {
        if (left.IsZero || right.IsZero) return Zero;
        if (left.IsWhole && right.IsWhole) return new Fraction(left.numerator * right.numerator, BigInteger.Zero);
        return Reduce(left.numerator * right.numerator, left.Denominator * right.Denominator);
    }

    public static Fraction operator /(Fraction left, Fraction right)
    {
        if (right.IsZero) throw new DivideByZeroException();
        return left.IsZero
            ? Zero
            : Reduce(left.numerator * right.Denominator, left.Denominator * right.numerator);
    }

    public static bool operator ==(Fraction left, Fraction right) => left.Equals(right);

    public static bool operator !=(Fraction left, Fraction right) => !left.Equals(right);

    public static bool operator <(Fraction left, Fraction right) => left.CompareTo(right) < 0;

    public static bool operator >(Fraction left, Fraction right) => left.CompareTo(right) > 0;

    public int CompareTo(Fraction other) => (this - other).Sign;

    public bool Equals(Fraction other) => numerator == other.numerator && denominator == other.denominator;

    public override bool Equals(object? obj) => obj is Fraction other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(numerator, denominator);

    public override string ToString() => IsWhole
        ? numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{numerator}/{denominator}");

    /// <summary>The nearest double, to within a rounding or two.</summary>
    public double ToDouble()
    {
        // Both may be beyond the range of a double while their quotient is not.
        var excess = (int)Math.Max(BigInteger.Abs(numerator).GetBitLength(), Denominator.GetBitLength()) - 1000;
        return excess <= 0
            ? (double)numerator / (double)Denominator
            : (double)(numerator >> excess) / (double)(Denominator >> excess);
    }

    private static Fraction Reduce(BigInteger numerator, BigInteger denominator)
    {
        if (numerator.IsZero) return Zero;
        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (denominator.Sign < 0) divisor = -divisor;
        if (!divisor.IsOne)
        {
            numerator /= divisor;
            denominator /= divisor;
        }

        return new Fraction(numerator, denominator.IsOne ? BigInteger.Zero : denominator);
    }
}
