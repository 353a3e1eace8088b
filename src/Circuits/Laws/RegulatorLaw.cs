namespace Circuits.Laws;

/// <summary>The spool of a regulator.</summary>
/// <param name="Area">Land on which the regulated pressure acts, m2.</param>
/// <param name="Rate">Spring rate, N/m, above zero.</param>
/// <param name="Width">Width of its ports around the bore, m.</param>
/// <param name="Opening">Travel from a port's edge to fully open, m.</param>
/// <param name="Overlap">Travel between shutting one port and opening the other, m, each way; negative for an underlap.</param>
internal readonly record struct RegulatorSizes(double Area, double Rate, double Width, double Opening, double Overlap);

/// <summary>How far a regulator's port is open, and what that hangs on.</summary>
/// <param name="Area">Open area, m2.</param>
/// <param name="ByPressure">Change with the regulated pressure, m2/Pa.</param>
/// <param name="ByDifference">Change with the pressure difference across the port, m2/Pa.</param>
internal readonly record struct RegulatorOpening(double Area, double ByPressure, double ByDifference);

/// <summary>
/// A regulator by force balance: p A = F + k x, with the jet's force on top where a port is open. A spilling one opens to its outlet as
/// pressure rises, a reducing one goes from feeding to draining; the droop k x / A between follows from the port's area over travel.
/// Source: the force balance of A. Esposito, "Fluid Power with Applications", 6th ed., 2005, ch. 8, with port areas by <see cref="SpoolPort"/>
/// and the jet by <see cref="FlowForce"/>.
/// </summary>
internal static class RegulatorLaw
{
    /// <summary>The pressure that it holds at the port's edge, Pa.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="force">Force of spring, boost and signal pressures against the regulated one with the spool there, N.</param>
    public static double SetPressure(in RegulatorSizes spool, double force) => force / spool.Area;

    /// <summary>How far it is open towards a drain, or a spilling one towards its outlet: more as pressure rises.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="pressure">Regulated pressure, Pa.</param>
    /// <param name="force">As for <see cref="SetPressure"/>, N.</param>
    /// <param name="difference">Pressure difference across the port, Pa, whose jet tends to shut it; counts above zero.</param>
    /// <param name="outlet">Its place among several outlets that open one after the other, from 0.</param>
    public static RegulatorOpening Spill(in RegulatorSizes spool, double pressure, double force, double difference, int outlet = 0) =>
        Open(spool, (pressure * spool.Area) - force, 1, difference, outlet);

    /// <summary>How far a reducing regulator feeds its outlet: less as pressure rises.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="pressure">Regulated pressure, Pa.</param>
    /// <param name="force">As for <see cref="SetPressure"/>, N.</param>
    /// <param name="difference">As for <see cref="Spill"/>.</param>
    public static RegulatorOpening Feed(in RegulatorSizes spool, double pressure, double force, double difference) =>
        Open(spool, force - (pressure * spool.Area), -1, difference, 0);

    private static RegulatorOpening Open(in RegulatorSizes spool, double excess, int sign, double difference, int outlet)
    {
        // Up to the port's edge the spring alone counts; from there on the jet stiffens it, in proportion to how far it is open.
        var (jet, jetSlope) = difference > 0 ? (FlowForce.Steady(spool.Width, difference), FlowForce.Steady(spool.Width, 1)) : (0, 0);
        var rate = spool.Rate + jet;
        var travel = (excess - (spool.Rate * (spool.Overlap + (outlet * spool.Opening)))) / rate;
        var open = SpoolPort.Open(travel, 0, spool.Width, spool.Opening);
        return new RegulatorOpening(open.Area, sign * open.Slope * spool.Area / rate, -open.Slope * travel / rate * jetSlope);
    }
}
