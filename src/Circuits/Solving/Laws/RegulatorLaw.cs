namespace Circuits.Solving.Laws;

/// <summary>The spool of a regulator.</summary>
/// <param name="Area">Land on which the regulated pressure acts, m2.</param>
/// <param name="Preload">Spring force with the spool at the port's edge, N.</param>
/// <param name="Rate">Spring rate, N/m, above zero.</param>
/// <param name="Width">Width of its ports around the bore, m.</param>
/// <param name="Opening">Travel from a port's edge to fully open, m.</param>
/// <param name="Overlap">Travel between shutting one port and opening the other, m, each way; negative for an underlap.</param>
internal readonly record struct RegulatorSpool(double Area, double Preload, double Rate, double Width, double Opening, double Overlap);

/// <summary>
/// A regulator by force balance: p A = F0 + k x + signals. A spilling one opens to its outlet as pressure rises, a reducing one goes
/// from feeding to draining; the droop k x / A between follows from the port's area over travel.
/// Source: the force balance of A. Esposito, "Fluid Power with Applications", 6th ed., 2005, ch. 8, with port areas by <see cref="SpoolPort"/>.
/// </summary>
internal static class RegulatorLaw
{
    /// <summary>The pressure that it holds at the port's edge, Pa.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="signal">Force of boost or signal pressures with the spring, N.</param>
    public static double SetPressure(in RegulatorSpool spool, double signal) => (spool.Preload + signal) / spool.Area;

    /// <summary>How far a spilling regulator is open; slope by regulated pressure, m2/Pa.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="pressure">Regulated pressure, Pa.</param>
    /// <param name="signal">Force of boost pressures with the spring, N.</param>
    public static OpenArea Spill(in RegulatorSpool spool, double pressure, double signal) => Open(spool, Excess(spool, pressure, signal), 1);

    /// <summary>How far a reducing regulator feeds its outlet; slope by regulated pressure, m2/Pa, zero or less.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="pressure">Regulated pressure, Pa.</param>
    /// <param name="signal">Force of signal pressures with the spring, N.</param>
    public static OpenArea Feed(in RegulatorSpool spool, double pressure, double signal) => Open(spool, -Excess(spool, pressure, signal), -1);

    /// <summary>How far a reducing regulator drains its outlet; slope by regulated pressure, m2/Pa.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="pressure">Regulated pressure, Pa.</param>
    /// <param name="signal">Force of signal pressures with the spring, N.</param>
    public static OpenArea Drain(in RegulatorSpool spool, double pressure, double signal) => Spill(spool, pressure, signal);

    /// <summary>Travel past the port's edge, m; either sign.</summary>
    private static double Excess(in RegulatorSpool spool, double pressure, double signal) =>
        ((pressure * spool.Area) - spool.Preload - signal) / spool.Rate;

    private static OpenArea Open(in RegulatorSpool spool, double travel, int sign)
    {
        var open = SpoolPort.Open(travel, spool.Overlap, spool.Width, spool.Opening);
        return open with { Slope = sign * open.Slope * spool.Area / spool.Rate };
    }
}
