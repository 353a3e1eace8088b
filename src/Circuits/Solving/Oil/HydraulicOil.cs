namespace Circuits.Solving.Oil;

/// <summary>What is known of an oil, at any temperature.</summary>
/// <param name="Curve">Its viscosity over temperature.</param>
/// <param name="DensityAt15">Its density at 15 degC, kg/m3.</param>
/// <param name="Air">Share of the volume that is free air at atmospheric pressure, 0 to below 1.</param>
internal sealed record HydraulicOil(ViscosityCurve Curve, double DensityAt15, double Air)
{
    /// <summary>The oil at a temperature.</summary>
    /// <param name="celsius">The temperature, degC.</param>
    public OilAt At(double celsius) => new(celsius, OilDensity.At(DensityAt15, celsius), Curve.At(celsius), Air);
}

/// <summary>An oil at one temperature: what the laws of the elements ask for.</summary>
/// <param name="Celsius">The temperature, degC.</param>
/// <param name="Density">Density, kg/m3.</param>
/// <param name="KinematicViscosity">Kinematic viscosity, m2/s.</param>
/// <param name="Air">Share of the volume that is free air at atmospheric pressure.</param>
internal readonly record struct OilAt(double Celsius, double Density, double KinematicViscosity, double Air)
{
    /// <summary>Dynamic viscosity, Pa s.</summary>
    public double DynamicViscosity => Density * KinematicViscosity;

    /// <summary>Bulk modulus with its air, Pa.</summary>
    /// <param name="gauge">Gauge pressure, Pa, above -101325.</param>
    public double BulkModulusAt(double gauge) => BulkModulus.Effective(gauge + BulkModulus.Atmosphere, Air);
}
