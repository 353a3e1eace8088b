namespace Circuits.Laws;

/// <summary>What passes a link, and how that changes with the pressure difference over it.</summary>
/// <param name="Flow">Flow in the direction of the pressure difference, m3/s; has its sign.</param>
/// <param name="Slope">Change of flow with the pressure difference, m3/(s Pa); zero or more for a link, zero or less for a pump.</param>
internal readonly record struct LinkFlow(double Flow, double Slope)
{
    /// <summary>A link that is shut.</summary>
    public static LinkFlow None => default;

    /// <summary>Two links side by side.</summary>
    public static LinkFlow operator +(LinkFlow left, LinkFlow right) => new(left.Flow + right.Flow, left.Slope + right.Slope);
}
