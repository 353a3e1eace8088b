namespace Circuits.Laws;

/// <summary>
/// What a positive-displacement pump gives: what it displaces, less what slips back, which is laminar:
/// Q = D n - Ks p / mu. Source: the slip-flow model, from memory of H. E. Merritt, "Hydraulic Control Systems", Wiley 1967, ch. 4.
/// </summary>
internal static class PumpLaw
{
    /// <summary>What the pump gives, m3/s, and how that falls with pressure.</summary>
    /// <param name="displacement">m3 a turn.</param>
    /// <param name="speed">Turns a second, 0 or more.</param>
    /// <param name="slip">Slip coefficient, m3; see <see cref="Slip"/>.</param>
    /// <param name="pressure">Outlet over inlet, Pa.</param>
    /// <param name="dynamicViscosity">Pa s, above zero.</param>
    /// <returns>Less than zero where more slips back than is displaced.</returns>
    public static LinkFlow Given(double displacement, double speed, double slip, double pressure, double dynamicViscosity)
    {
        var slope = slip / dynamicViscosity;
        return new LinkFlow((displacement * speed) - (slope * pressure), -slope);
    }

    /// <summary>The slip coefficient from a volumetric efficiency at known conditions, m3.</summary>
    /// <param name="displacement">m3 a turn.</param>
    /// <param name="efficiency">Volumetric efficiency, 0 to 1.</param>
    /// <param name="speed">Turns a second at which it was measured.</param>
    /// <param name="pressure">Pa at which it was measured, above zero.</param>
    /// <param name="dynamicViscosity">Pa s at which it was measured.</param>
    public static double Slip(double displacement, double efficiency, double speed, double pressure, double dynamicViscosity) =>
        (1 - efficiency) * displacement * speed * dynamicViscosity / pressure;
}
