namespace Circuits.Solving.Flow;

/// <summary>
/// A piston on a spring: a clutch, a servo with a release side, an accumulator. Without mass: it stands where pressure and
/// spring agree, from its stop at rest to the end of its stroke, where a clutch's plates take the force and yield a little.
/// </summary>
internal sealed class FlowPiston
{
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
    public double Force(ReadOnlySpan<double> pressure, double head) => (ApplyArea * pressure[Apply]) - (ReleaseArea * pressure[Release]) - Preload + head;

    /// <summary>What presses on the plates, N; none before they touch.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    /// <param name="head">What oil that turns with it adds, N.</param>
    public double Clamp(ReadOnlySpan<double> pressure, double head) => Math.Max(0, Force(pressure, head) - Full);

    /// <summary>Net force at the end of the stroke, N.</summary>
    public double Full => Rate * Stroke;

    /// <summary>How far it stands, as a share of its stroke (above 1 while plates yield), and how that changes with net force, 1/N.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    /// <param name="head">What oil that turns with it adds, N.</param>
    public (double Share, double Slope) At(ReadOnlySpan<double> pressure, double head)
    {
        var force = Force(pressure, head) / Full;
        if (force <= 0) return (0, 0);
        var give = Rate / PackRate;
        return force < 1 ? (force, 1 / Full) : (1 + (give * (force - 1)), give / Full);
    }
}
