namespace Circuits.Solving.Oil;

/// <summary>
/// Kinematic viscosity over temperature: log log (nu + 0.7) = A - B log T, with nu in mm2/s and T in kelvin (Walther; ASTM
/// D341, its form for nu above 2 mm2/s). Below that it still falls and stays above zero, but is an extrapolation.
/// </summary>
/// <param name="A">The constant.</param>
/// <param name="B">The slope; above zero for an oil that thins when it warms.</param>
internal readonly record struct ViscosityCurve(double A, double B)
{
    private const double Shift = 0.7;
    private const double Zero = 273.15;

    // The law runs into zero near 0.3 mm2/s at temperatures that no oil survives.
    private const double Thinnest = 0.1;

    /// <summary>The curve through two points.</summary>
    /// <param name="coolCelsius">One temperature, degC.</param>
    /// <param name="coolViscosity">Kinematic viscosity there, m2/s, above zero.</param>
    /// <param name="hotCelsius">Another temperature, degC.</param>
    /// <param name="hotViscosity">Kinematic viscosity there, m2/s, above zero.</param>
    public static ViscosityCurve Through(double coolCelsius, double coolViscosity, double hotCelsius, double hotViscosity)
    {
        var (cool, hot) = (LogLog(coolViscosity), LogLog(hotViscosity));
        var (logCool, logHot) = (Math.Log10(coolCelsius + Zero), Math.Log10(hotCelsius + Zero));
        var slope = (cool - hot) / (logHot - logCool);
        return new ViscosityCurve(cool + (slope * logCool), slope);
    }

    /// <summary>Kinematic viscosity, m2/s.</summary>
    /// <param name="celsius">Temperature, degC, above absolute zero; the law is meant for about -40 to 150.</param>
    public double At(double celsius)
    {
        var shifted = Math.Pow(10, Math.Pow(10, A - (B * Math.Log10(celsius + Zero))));
        return Math.Max(shifted - Shift, Thinnest) * 1e-6;
    }

    private static double LogLog(double viscosity) => Math.Log10(Math.Log10((viscosity * 1e6) + Shift));
}
