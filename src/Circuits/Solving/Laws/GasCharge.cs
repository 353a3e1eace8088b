namespace Circuits.Solving.Laws;

/// <summary>
/// The gas of an accumulator: p V^n = constant, pressures absolute; n 1 when slow (isothermal), 1.4 when fast (adiabatic, nitrogen).
/// Source: J. Sullivan, "Fluid Power: Theory and Applications", 4th ed., ch. 12.
/// </summary>
internal static class GasCharge
{
    /// <summary>Volume of the gas, m3, and its slope by pressure, m3/Pa (below zero).</summary>
    /// <param name="absolute">Absolute pressure, Pa, above zero.</param>
    /// <param name="knownAbsolute">An absolute pressure at which the volume is known, Pa.</param>
    /// <param name="knownVolume">The volume there, m3.</param>
    /// <param name="exponent">1 to 1.4.</param>
    public static (double Volume, double Slope) At(double absolute, double knownAbsolute, double knownVolume, double exponent)
    {
        var volume = knownVolume * Math.Pow(knownAbsolute / absolute, 1 / exponent);
        return (volume, -volume / (exponent * absolute));
    }
}
