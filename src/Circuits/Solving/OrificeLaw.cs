namespace Circuits.Solving;

/// <summary>
/// The law of a static orifice: flow is area times the root of the pressure difference (constants cancel where only
/// pressures are asked for), rounded off within <c>softness</c> of zero so that it has a slope everywhere.
/// </summary>
internal static class OrificeLaw
{
    /// <summary>Flow per area for a pressure difference, both in kPa terms, odd and rising; and its slope. They share their roots.</summary>
    public static (double Flow, double Slope) At(double difference, double softness)
    {
        var square = (difference * difference) + (softness * softness);
        var root = Math.Sqrt(Math.Sqrt(square));
        return (difference / root, ((0.5 * difference * difference) + (softness * softness)) / (square * root));
    }
}
