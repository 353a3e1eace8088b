namespace Circuits.Solving.Oil;

/// <summary>Density over temperature: rho = rho15 / (1 + alpha (t - 15)).</summary>
internal static class OilDensity
{
    /// <summary>
    /// Thermal expansion of a typical mineral oil, 1/K (M. G. Rabie, "Fluid Power Engineering", McGraw-Hill 2009, eq 2.81, p. 37).
    /// </summary>
    public const double Expansion = 0.0007;

    /// <summary>Density, kg/m3.</summary>
    /// <param name="at15">Density at 15 degC, kg/m3, above zero.</param>
    /// <param name="celsius">Temperature, degC; the law is meant for about -40 to 150.</param>
    public static double At(double at15, double celsius) => at15 / (1 + (Expansion * (celsius - 15)));
}
