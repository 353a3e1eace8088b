namespace Circuits.Solving.Flow;

/// <summary>
/// A piston on a spring: a clutch, a servo with a release side, an accumulator. Without mass: it stands where pressure and
/// spring agree, between its stops.
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

    /// <summary>m; above zero.</summary>
    public required double Stroke { get; init; }

    /// <summary>Places in the system: apply by apply, apply by release, release by apply, release by release; -1 where there is none.</summary>
    public int[] Places { get; set; } = [-1, -1, -1, -1];

    /// <summary>The network's clutch, or -1 for an accumulator.</summary>
    public int Clutch { get; init; } = -1;

    /// <summary>Net force off the spring's preload, N.</summary>
    public double Force(double[] pressure) => (ApplyArea * pressure[Apply]) - (ReleaseArea * pressure[Release]) - Preload;

    /// <summary>How far it stands, as a share of its stroke, and how that changes with net force, 1/N.</summary>
    public (double Share, double Slope) At(double[] pressure)
    {
        var full = Rate * Stroke;
        var (share, slope) = Cushioned(Force(pressure) / full);
        return (share, slope / full);
    }

    /// <summary>
    /// 0 below, 1 above, straight between, rounded at both ends by parabolas that meet the straight piece and the stop in value
    /// and slope.
    /// </summary>
    private static (double Share, double Slope) Cushioned(double x)
    {
        const double w = Cushion;
        if (x <= -w) return (0, 0);
        if (x >= 1 + w) return (1, 0);
        if (x < w) return ((x + w) * (x + w) / (4 * w), (x + w) / (2 * w));
        if (x > 1 - w) return (1 - ((1 + w - x) * (1 + w - x) / (4 * w)), (1 + w - x) / (2 * w));
        return (x, 1);
    }
}
