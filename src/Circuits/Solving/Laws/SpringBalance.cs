namespace Circuits.Solving.Laws;

/// <summary>
/// A piston, spool or poppet on a spring, between two stops: F = k (x0 + x). Without mass and friction. The corners at the stops
/// are rounded over a thousandth of the spring's rise.
/// Source: A. Esposito, "Fluid Power with Applications", 6th ed., 2005, ch. 8; the rounding is the project's own.
/// </summary>
internal static class SpringBalance
{
    private const double Rounding = 1e-3;

    /// <summary>Travel, m, 0 to <paramref name="stroke"/>, and its slope by force, m/N.</summary>
    /// <param name="force">Net force against the spring, N: sum of pressure times area.</param>
    /// <param name="preload">Spring force at the start, N, 0 or more.</param>
    /// <param name="rate">N/m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    public static (double Travel, double Slope) Travel(double force, double preload, double rate, double stroke)
    {
        var rise = rate * stroke;
        var (low, lowSlope) = Rounded((force - preload) / rise);
        var (high, highSlope) = Rounded(((force - preload) / rise) - 1);
        return (stroke * (low - high), (lowSlope - highSlope) / rate);
    }

    /// <summary>Net force of a servo or an accumulator, N: apply side less release side.</summary>
    /// <param name="applyPressure">Pa.</param>
    /// <param name="applyArea">m2.</param>
    /// <param name="releasePressure">Pa.</param>
    /// <param name="releaseArea">m2; 0 for a plain piston.</param>
    public static double Force(double applyPressure, double applyArea, double releasePressure, double releaseArea) =>
        (applyPressure * applyArea) - (releasePressure * releaseArea);

    /// <summary>The pressure at which it begins to move, Pa.</summary>
    /// <param name="preload">N.</param>
    /// <param name="area">m2, above zero.</param>
    public static double Cracking(double preload, double area) => preload / area;

    /// <summary>How far pressure strays from there over a travel (droop or override), Pa.</summary>
    /// <param name="rate">N/m.</param>
    /// <param name="travel">m.</param>
    /// <param name="area">m2, above zero.</param>
    public static double Droop(double rate, double travel, double area) => rate * travel / area;

    private static (double Value, double Slope) Rounded(double x)
    {
        var root = Math.Sqrt((x * x) + (Rounding * Rounding));
        var value = x > 0 ? (x + root) / 2 : Rounding * Rounding / (2 * (root - x));
        return (value, value / root);
    }
}
