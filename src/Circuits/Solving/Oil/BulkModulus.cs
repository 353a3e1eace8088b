namespace Circuits.Solving.Oil;

/// <summary>
/// Stiffness of oil with free air in it. Pressures here are absolute, Pa. The air is compressed as a gas
/// (p v^n = constant), the oil by its own modulus; nothing dissolves, so the answer is on the soft side.
/// Source: M. G. Rabie, "Fluid Power Engineering", McGraw-Hill 2009, eq 2.57, p. 32, with the air's share followed from
/// atmospheric pressure to p (own derivation).
/// </summary>
internal static class BulkModulus
{
    /// <summary>Modulus of oil without air, Pa: 1.4 GPa (Rabie, p. 51).</summary>
    public const double Pure = 1.4e9;

    /// <summary>Exponent of the gas: 1.4 when compressed fast; 1 when slow enough to keep its temperature.</summary>
    public const double Adiabatic = 1.4;

    /// <summary>Atmospheric pressure, Pa: where gauge pressure is zero (standard atmosphere, ISO 2533).</summary>
    public const double Atmosphere = 101_325;

    /// <summary>Volume at a pressure over that at <see cref="Atmosphere"/>; falls with pressure, smooth.</summary>
    /// <param name="absolute">Absolute pressure, Pa, above zero.</param>
    /// <param name="air">Share of the volume that is air at atmospheric pressure, 0 to below 1.</param>
    /// <param name="exponent">The gas exponent, 1 to 1.4.</param>
    /// <param name="pure">Modulus of the oil alone, Pa.</param>
    /// <param name="atmosphere">The pressure at which the share of air is told, Pa.</param>
    public static double RelativeVolume(
        double absolute, double air, double exponent = Adiabatic, double pure = Pure, double atmosphere = Atmosphere) =>
        Gas(absolute, air, exponent, atmosphere) + Liquid(absolute, air, pure, atmosphere);

    /// <summary>The modulus -V dp/dV at a pressure, Pa; rises with pressure, smooth, at most that of the oil alone while p &lt; pure/n.</summary>
    /// <param name="absolute">Absolute pressure, Pa, above zero.</param>
    /// <param name="air">Share of the volume that is air at atmospheric pressure, 0 to below 1.</param>
    /// <param name="exponent">The gas exponent, 1 to 1.4.</param>
    /// <param name="pure">Modulus of the oil alone, Pa.</param>
    /// <param name="atmosphere">The pressure at which the share of air is told, Pa.</param>
    public static double Effective(
        double absolute, double air, double exponent = Adiabatic, double pure = Pure, double atmosphere = Atmosphere)
    {
        var gas = Gas(absolute, air, exponent, atmosphere);
        var liquid = Liquid(absolute, air, pure, atmosphere);
        return (gas + liquid) / ((gas / (exponent * absolute)) + (liquid / pure));
    }

    private static double Gas(double absolute, double air, double exponent, double atmosphere) =>
        air * Math.Pow(atmosphere / absolute, 1 / exponent);

    private static double Liquid(double absolute, double air, double pure, double atmosphere) =>
        (1 - air) * Math.Exp((atmosphere - absolute) / pure);
}
