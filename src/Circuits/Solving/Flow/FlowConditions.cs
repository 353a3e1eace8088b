namespace Circuits.Solving.Flow;

/// <summary>A flow and its slope by pressure.</summary>
/// <param name="Rate">m3/s.</param>
/// <param name="Slope">m3/s per Pa.</param>
internal readonly record struct FlowRate(double Rate, double Slope);

/// <summary>What the pump gives against the pressure in its passage.</summary>
/// <param name="Given">At no pressure, m3/s.</param>
/// <param name="Relief">It never goes above this, Pa: what it gives falls to nothing within a hundredth of it.</param>
internal readonly record struct PumpCurve(double Given, double Relief)
{
    public FlowRate At(double pressure)
    {
        var band = Relief / 100;
        if (pressure <= Relief - band) return new FlowRate(Given, 0);
        return new FlowRate(Given * (Relief - pressure) / band, -Given / band);
    }
}

/// <summary>Oil and pump as they are while a network is solved.</summary>
/// <param name="Density">kg/m3.</param>
/// <param name="Viscosity">Kinematic, m2/s.</param>
/// <param name="Pump">The pump's curve.</param>
internal sealed record FlowConditions(double Density, double Viscosity, PumpCurve Pump)
{
    /// <summary>Bulk modulus of the oil with the air in it, Pa.</summary>
    public double Bulk { get; init; } = 7e8;

    public static FlowConditions None { get; } = new(850, 8e-6, default);

    /// <summary>Flow through a sharp hole.</summary>
    /// <param name="area">m2.</param>
    /// <param name="difference">Pa.</param>
    public FlowRate Orifice(double area, double difference)
    {
        const double discharge = 0.62;
        var transition = 100 * Viscosity / (discharge * Math.Sqrt(4 * area / Math.PI));
        var knee = 0.5 * Density * transition * transition;
        var scale = discharge * area * Math.Sqrt(2 / Density);
        var root = Math.Sqrt(Math.Sqrt((difference * difference) + (knee * knee)));
        var square = (difference * difference) + (knee * knee);
        return new FlowRate(scale * difference / root, scale * (square - (0.5 * difference * difference)) / (square * root));
    }

    /// <summary>Flow along a track.</summary>
    /// <param name="area">Cross-section, m2.</param>
    /// <param name="length">m.</param>
    /// <param name="difference">Pa.</param>
    public FlowRate Track(double area, double length, double difference)
    {
        var diameter = Math.Sqrt(4 * area / Math.PI);
        var slope = area * diameter * diameter / (32 * Density * Viscosity * length);
        return new FlowRate(slope * difference, slope);
    }
}
