namespace Circuits.Laws;

/// <summary>
/// The steady force of the jet that tends to shut a spool's port: F = 2 Cd Cv A dp cos t. Source: from memory of H. E. Merritt,
/// "Hydraulic Control Systems", Wiley 1967, ch. 5 (momentum of the jet); 69 degrees is the jet's angle at a sharp land with no clearance.
/// </summary>
internal static class FlowForce
{
    /// <summary>Angle of the jet to the spool's axis, rad.</summary>
    public const double JetAngle = 69 * Math.PI / 180;

    /// <summary>Velocity coefficient: 0.97 to 0.99 (M. G. Rabie, "Fluid Power Engineering", 2009, p. 27).</summary>
    public const double Velocity = 0.98;

    /// <summary>The force, N, towards shut when <paramref name="dp"/> is above zero.</summary>
    /// <param name="area">Open area, m2.</param>
    /// <param name="dp">Pressure difference, Pa.</param>
    /// <param name="discharge">Discharge coefficient of the port.</param>
    public static double Steady(double area, double dp, double discharge = SharpOrifice.Discharge) =>
        2 * discharge * Velocity * area * dp * Math.Cos(JetAngle);
}
