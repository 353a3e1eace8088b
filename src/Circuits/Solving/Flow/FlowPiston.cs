namespace Circuits.Solving.Flow;

/// <summary>
/// A piston on a spring: a clutch, a servo with a release side, an accumulator. Without mass: it stands where pressure and
/// spring agree, from its stop at rest to the end of its stroke, where a clutch's plates take the force and yield a little.
/// </summary>
internal sealed class FlowPiston
{
    /// <summary>Near its stops the piston comes to rest over this share of its stroke, so that its law has no corner.</summary>
    private const double Cushion = 0.02;

    public required string Name { get; init; }

    /// <summary>The cell that pushes it off its spring.</summary>
    public required int Apply { get; init; }

    /// <summary>The cell behind it; 0 for sump.</summary>
    public required int Release { get; init; }

    /// <summary>m2.</summary>
    public required double ApplyArea { get; init; }

    /// <summary>m2.</summary>
    public required double ReleaseArea { get; init; }

    /// <summary>Spring force at the start of the stroke, N.</summary>
    public required double Preload { get; init; }

    /// <summary>Spring rate, N/m; above zero.</summary>
    public required double Rate { get; init; }

    /// <summary>Until the plates touch, m; above zero.</summary>
    public required double Stroke { get; init; }

    /// <summary>Stiffness of the plates once they touch, N/m; infinite where the stroke ends at a stop.</summary>
    public double PackRate { get; init; } = double.PositiveInfinity;

    /// <summary>Places in the system: apply by apply, apply by release, release by apply, release by release; -1 where there is none.</summary>
    public int[] Places { get; set; } = [-1, -1, -1, -1];

    /// <summary>The network's clutch, or -1 for an accumulator.</summary>
    public int Clutch { get; init; } = -1;

    /// <summary>Net force off the spring's preload, N.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    /// <param name="head">What oil that turns with it adds, N.</param>
    public double Force(double[] pressure, double head) => (ApplyArea * pressure[Apply]) - (ReleaseArea * pressure[Release]) - Preload + head;

    /// <summary>What presses on the plates, N; none before they touch.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    /// <param name="head">What oil that turns with it adds, N.</param>
    public double Clamp(double[] pressure, double head) => Math.Max(0, Force(pressure, head) - (Rate * Stroke));

    /// <summary>How far it stands, as a share of its stroke (above 1 while plates yield), and how that changes with net force, 1/N.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    /// <param name="head">What oil that turns with it adds, N.</param>
    public (double Share, double Slope) At(double[] pressure, double head)
    {
        var full = Rate * Stroke;
        var force = Force(pressure, head) / full;
        var (share, slope) = Cushioned(force);
        var (over, overSlope) = Rounded(force - 1);
        var give = Rate / PackRate;
        return (share + (give * over), (slope + (give * overSlope)) / full);
    }

    /// <summary>0 below, 1 above, straight between, rounded at both ends.</summary>
    private static (double Share, double Slope) Cushioned(double x)
    {
        if (x < 0.5) return Rounded(x);
        var (rest, slope) = Rounded(1 - x);
        return (1 - rest, slope);
    }

    /// <summary>0 below 0, x above, by a parabola between that meets both in value and slope.</summary>
    private static (double Value, double Slope) Rounded(double x)
    {
        const double w = Cushion;
        if (x <= -w) return (0, 0);
        return x >= w ? (x, 1) : ((x + w) * (x + w) / (4 * w), (x + w) / (2 * w));
    }
}
