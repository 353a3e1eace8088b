namespace Circuits.Laws;

/// <summary>
/// What a multi-plate clutch can carry: T = z mu W r. Source: R. S. Khurmi and J. K. Gupta, "Theory of Machines", 14th ed., Eurasia 2009, ch. 10.
/// </summary>
internal static class ClutchTorque
{
    /// <summary>Torque capacity, N m; zero when nothing presses.</summary>
    /// <param name="force">Force on the plates, N: piston less spring.</param>
    /// <param name="friction">Coefficient of friction.</param>
    /// <param name="faces">Number of friction faces.</param>
    /// <param name="radius">Mean friction radius, m.</param>
    public static double Capacity(double force, double friction, int faces, double radius) => faces * friction * Math.Max(0, force) * radius;

    /// <summary>Mean radius of worn-in plates (uniform wear), m.</summary>
    /// <param name="outer">m.</param>
    /// <param name="inner">m.</param>
    public static double WornRadius(double outer, double inner) => (outer + inner) / 2;

    /// <summary>Mean radius of new plates (uniform pressure), m.</summary>
    /// <param name="outer">m.</param>
    /// <param name="inner">m, below <paramref name="outer"/>.</param>
    public static double NewRadius(double outer, double inner) =>
        2.0 / 3 * ((outer * outer) + (outer * inner) + (inner * inner)) / (outer + inner);

    /// <summary>Force from the highest pressure between worn-in plates, N: W = 2 pi p ri (ro - ri).</summary>
    /// <param name="pressure">Pa, at the inner radius.</param>
    /// <param name="outer">m.</param>
    /// <param name="inner">m.</param>
    public static double WornForce(double pressure, double outer, double inner) => 2 * Math.PI * pressure * inner * (outer - inner);
}
