namespace Circuits.Laws;

/// <summary>
/// Laminar flow through narrow gaps: linear in pressure difference. Range: Reynolds number of the gap below about 1400. Beyond that what it takes to get
/// oil moving counts as well: <see cref="WithInertia"/>.
/// </summary>
internal static class Leakage
{
    /// <summary>
    /// Between a spool and its bore: Q = pi D c^3 dp / (12 mu L) (1 + 1.5 e^2). Source: M. G. Rabie, "Fluid Power Engineering",
    /// McGraw-Hill 2009, eq 2.19; eccentricity by the mean of (1 + e cos t)^3 around the gap.
    /// </summary>
    /// <param name="diameter">m, large against the clearance.</param>
    /// <param name="clearance">Radial clearance when centred, m.</param>
    /// <param name="length">Length of the land, m, above zero.</param>
    /// <param name="eccentricity">Offset over clearance, 0 centred to 1 touching.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="dynamicViscosity">Pa s, above zero.</param>
    public static LinkFlow Annular(double diameter, double clearance, double length, double eccentricity, double dp, double dynamicViscosity) =>
        Linear(Math.PI * diameter * Cube(clearance) * (1 + (1.5 * eccentricity * eccentricity)) / (12 * dynamicViscosity * length), dp);

    /// <summary>Through a flat gap: Q = w h^3 dp / (12 mu L). Source: as above, the annulus unrolled.</summary>
    /// <param name="width">m, large against the height.</param>
    /// <param name="height">m.</param>
    /// <param name="length">Length along the flow, m, above zero.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="dynamicViscosity">Pa s, above zero.</param>
    public static LinkFlow Slot(double width, double height, double length, double dp, double dynamicViscosity) =>
        Linear(width * Cube(height) / (12 * dynamicViscosity * length), dp);

    /// <summary>
    /// Heads of velocity lost at the ends of a gap: half at a sharp edge on the way in, one on the way out (R. W. Fox and A. T. McDonald, "Introduction to
    /// Fluid Mechanics", 5th ed., ch. 8, minor losses).
    /// </summary>
    public const double EndLoss = 1.5;

    /// <summary>
    /// Friction along a gap and the loss at its ends, one after the other: dp = Q / G + K rho (Q / A)^2 / 2. Thin oil in a wide gap flows as through a hole,
    /// never faster than Bernoulli's v^2 = 2 dp / rho. Source: as for <see cref="EndLoss"/>. Turbulent friction would make it a little less.
    /// </summary>
    /// <param name="laminar">Friction alone, at the same pressure difference.</param>
    /// <param name="area">Cross-section of the gap, m2, above zero.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="density">kg/m3, above zero.</param>
    public static LinkFlow WithInertia(LinkFlow laminar, double area, double dp, double density)
    {
        var resistance = 1 / laminar.Slope;
        var loss = EndLoss * density / (2 * area * area);
        var root = Math.Sqrt((resistance * resistance) + (4 * loss * Math.Abs(dp)));
        return new LinkFlow(2 * dp / (resistance + root), 1 / root);
    }

    private static LinkFlow Linear(double slope, double dp) => new(slope * dp, slope);

    private static double Cube(double x) => x * x * x;
}
