namespace Circuits.Laws;

/// <summary>
/// A ball or poppet on a spring over a round seat, pressed open by the difference in pressure across it. The force beyond the spring's preload
/// lifts it by that force over the spring's rate, and what it leaves open rises with the lift until it is the whole hole: own geometry.
/// </summary>
internal static class SpringBypass
{
    /// <summary>The share of the hole that is open, 0 to 1, and how it changes with the difference, 1/Pa.</summary>
    /// <param name="difference">Pressure before it less pressure behind it, Pa; any sign.</param>
    /// <param name="opensAt">Difference at which it leaves its seat, Pa; above zero.</param>
    /// <param name="band">Difference beyond that at which the whole hole is open, Pa; above zero.</param>
    public static OpenArea Open(double difference, double opensAt, double band)
    {
        var share = (difference - opensAt) / band;
        return share <= 0 ? new OpenArea(0, 0) : share >= 1 ? new OpenArea(1, 0) : new OpenArea(share, 1 / band);
    }
}
