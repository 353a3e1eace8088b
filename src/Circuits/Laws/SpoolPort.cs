namespace Circuits.Laws;

/// <summary>
/// A port that a spool's land uncovers: width times travel past the overlap, between shut and fully open. Both corners are rounded
/// over the radial clearance c, s(x) = (x + sqrt(x^2 + c^2)) / 2, so that the law is smooth and rising, and a land at the port's
/// edge still passes oil. Source: plain geometry; the rounding is the project's own.
/// </summary>
internal static class SpoolPort
{
    /// <summary>Radial clearance of a spool in its bore, m (common practice, no source).</summary>
    public const double Clearance = 10e-6;

    /// <summary>Open area by travel.</summary>
    /// <param name="travel">How far the spool has moved towards opening, m.</param>
    /// <param name="overlap">Travel before the port begins to open, m; negative for an underlap, which is open at rest.</param>
    /// <param name="width">Width of the port around the bore, m; pi times the bore for a full groove.</param>
    /// <param name="opening">Length of the port along the spool, m, above zero.</param>
    /// <param name="clearance">Radial clearance, m, above zero.</param>
    public static OpenArea Open(double travel, double overlap, double width, double opening, double clearance = Clearance)
    {
        var (low, lowSlope) = Rounded(travel - overlap, clearance);
        var (high, highSlope) = Rounded(travel - overlap - opening, clearance);
        return new OpenArea(width * (low - high), width * (lowSlope - highSlope));
    }

    private static (double Value, double Slope) Rounded(double x, double clearance)
    {
        var root = Math.Sqrt((x * x) + (clearance * clearance));
        // Below zero x and root all but cancel; the other form of the same number keeps its digits.
        var value = x > 0 ? (x + root) / 2 : clearance * clearance / (2 * (root - x));
        return (value, value / root);
    }
}
