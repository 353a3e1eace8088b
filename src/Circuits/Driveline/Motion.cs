using System.Collections.Immutable;

namespace Circuits.Driveline;

/// <summary>What the gear train can do with the clutches that hold.</summary>
public enum MotionKind
{
    /// <summary>Input and output turn at a fixed ratio.</summary>
    Drives,

    /// <summary>The input turns freely of the output.</summary>
    NoDrive,

    /// <summary>The input, or the output, cannot turn.</summary>
    TieUp,
}

/// <summary>How the gear train moves with the clutches that hold.</summary>
/// <param name="Kind">Drives, no drive or tie-up.</param>
/// <param name="Mobility">Degrees of freedom between input and output: 1 a ratio, more no drive, 0 tie-up.</param>
/// <param name="Ratio">Input speed over output speed, negative for reverse; null unless it drives.</param>
/// <param name="HoldingOneWays">One-way clutches that carry torque.</param>
/// <param name="Speeds">Speed of each member per unit of input speed, where it drives; empty otherwise.</param>
public sealed record Motion(
    MotionKind Kind, int Mobility, double? Ratio, ImmutableArray<string> HoldingOneWays,
    ImmutableArray<KeyValuePair<string, double>> Speeds);
