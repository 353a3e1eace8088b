namespace Circuits.Solving.Oil;

/// <summary>What is taken of the oil where a file says nothing. Each use is reported as an assumption.</summary>
internal static class OilDefaults
{
    /// <summary>ISO viscosity grade 32: the order of a transmission oil (common practice, no source).</summary>
    public const int Grade = 32;

    /// <summary>
    /// Viscosity index where only a grade is given: 100, that of the scale's upper reference oil, and about that of plain
    /// mineral oil (common practice, no source). Transmission oils have more, which matters when cold.
    /// </summary>
    public const double Index = 100;

    /// <summary>Density at 15 degC, kg/m3 (Rabie, "Fluid Power Engineering", p. 37, takes it for mineral oil).</summary>
    public const double Density = 870;

    /// <summary>Working temperature, degC; 80 to 107 is normal (common practice, no source).</summary>
    public const double Temperature = 90;

    /// <summary>Share of free air at atmospheric pressure: 1 % (common practice, no source).</summary>
    public const double Air = 0.01;
}
