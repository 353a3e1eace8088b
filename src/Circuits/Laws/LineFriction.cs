namespace Circuits.Laws;

/// <summary>
/// Friction along a passage. Everything hangs on R = Re sqrt(f) = (D / nu) sqrt(2 D dp / (rho L)), which the pressure difference gives at once:
/// laminar Re = R^2 / 64; turbulent Re = -2 R log10(e / 3.7 + 2.51 / R) (Colebrook, explicit in R). From Re 2000 to where turbulent flow
/// reaches about 4000 a cubic joins them in value and slope. Odd, rising, with a continuous slope, finite at zero.
/// Source: R. W. Fox and A. T. McDonald, "Introduction to Fluid Mechanics", 5th ed., ch. 8 (both laws); the cubic is the project's own.
/// </summary>
internal static class LineFriction
{
    /// <summary>f Re of laminar flow in a round passage; see <see cref="RectangleFactor"/> for others.</summary>
    public const double RoundFactor = 64;

    /// <summary>The largest relative roughness for which the law keeps rising throughout; larger ones count as this.</summary>
    public const double RoughestRelative = 0.01;

    private const double LaminarTo = 2000;

    // Re sqrt(f) of smooth flow at Re 4000.
    private const double TurbulentFrom = 799;

    /// <summary>Flow along the passage.</summary>
    /// <param name="area">Cross-section, m2, above zero.</param>
    /// <param name="hydraulicDiameter">Four times the area over the perimeter, m, above zero.</param>
    /// <param name="length">m, above zero.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="density">kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">m2/s, above zero.</param>
    /// <param name="relativeRoughness">Height of roughness over hydraulic diameter, 0 (smooth, the default) to 0.01.</param>
    /// <param name="laminarFactor">f Re of laminar flow, 57 to 96.</param>
    public static LinkFlow Flow(
        double area, double hydraulicDiameter, double length, double dp, double density, double kinematicViscosity,
        double relativeRoughness = 0, double laminarFactor = RoundFactor)
    {
        // dp = unit R^2 and Q = perReynolds Re.
        var unit = density * length * kinematicViscosity * kinematicViscosity / (2 * hydraulicDiameter * hydraulicDiameter * hydraulicDiameter);
        var perReynolds = area * kinematicViscosity / hydraulicDiameter;
        var squared = Math.Abs(dp) / unit;
        var laminarEnd = laminarFactor * LaminarTo;
        if (squared <= laminarEnd) return new LinkFlow(perReynolds * dp / (unit * laminarFactor), perReynolds / (unit * laminarFactor));
        var r = Math.Sqrt(squared);
        var roughness = Math.Clamp(relativeRoughness, 0, RoughestRelative);
        var (reynolds, slope) = r < TurbulentFrom ? Between(r, Math.Sqrt(laminarEnd), laminarFactor, roughness) : Turbulent(r, roughness);
        return new LinkFlow(Math.Sign(dp) * perReynolds * reynolds, perReynolds * slope / (2 * r * unit));
    }

    /// <summary>f Re of laminar flow between the walls of a rectangle: 96 for a thin slit, 56.9 for a square.</summary>
    /// <param name="aspect">Shorter side over longer, 0 to 1.</param>
    /// <remarks>Source: the polynomial of Shah and London, from memory; within 0.06 % of the exact series.</remarks>
    public static double RectangleFactor(double aspect) =>
        96 * (1 + (aspect * (-1.3553 + (aspect * (1.9467 + (aspect * (-1.7012 + (aspect * (0.9564 - (aspect * 0.2537))))))))));

    private static (double Reynolds, double Slope) Turbulent(double r, double roughness)
    {
        var inner = (roughness / 3.7) + (2.51 / r);
        var log = -2 * Math.Log10(inner);
        return (r * log, log + (2 / Math.Log(10) * 2.51 / (r * inner)));
    }

    /// <summary>The cubic from the end of laminar flow to the start of turbulent flow.</summary>
    private static (double Reynolds, double Slope) Between(double r, double from, double laminarFactor, double roughness)
    {
        var width = TurbulentFrom - from;
        var t = (r - from) / width;
        var (start, startSlope) = (LaminarTo, 2 * from / laminarFactor * width);
        var (end, endSlope) = Turbulent(TurbulentFrom, roughness);
        endSlope *= width;
        var (cubic, square) = (startSlope + endSlope - (2 * (end - start)), (3 * (end - start)) - (2 * startSlope) - endSlope);
        return (
            start + (t * (startSlope + (t * (square + (t * cubic))))),
            (startSlope + (t * ((2 * square) + (3 * t * cubic)))) / width);
    }
}
