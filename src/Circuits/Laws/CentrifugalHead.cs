namespace Circuits.Laws;

/// <summary>
/// Oil that turns with a clutch: p = rho w^2 (r^2 - r0^2) / 2, zero at the radius r0 to which it stands. Source: the forced vortex, R. S. Dighe,
/// "Hydraulics Made Easy", 2005, ch. 3; the force is its integral over the piston's ring.
/// </summary>
internal static class CentrifugalHead
{
    /// <summary>Pressure that turning adds at a radius, Pa.</summary>
    /// <param name="density">kg/m3.</param>
    /// <param name="speed">rad/s, either sign.</param>
    /// <param name="radius">m, at least <paramref name="oilRadius"/>.</param>
    /// <param name="oilRadius">Radius of the oil's inner surface, m.</param>
    public static double Pressure(double density, double speed, double radius, double oilRadius) =>
        density * speed * speed / 2 * ((radius * radius) - (oilRadius * oilRadius));

    /// <summary>Force that turning adds to a ring-shaped piston, N.</summary>
    /// <param name="density">kg/m3.</param>
    /// <param name="speed">rad/s, either sign.</param>
    /// <param name="outer">Outer radius of the piston, m.</param>
    /// <param name="inner">Inner radius of the piston, m, at least <paramref name="oilRadius"/>.</param>
    /// <param name="oilRadius">Radius of the oil's inner surface, m.</param>
    public static double Force(double density, double speed, double outer, double inner, double oilRadius)
    {
        var (a, b) = ((outer * outer) - (oilRadius * oilRadius), (inner * inner) - (oilRadius * oilRadius));
        return Math.PI / 4 * density * speed * speed * ((a * a) - (b * b));
    }
}
