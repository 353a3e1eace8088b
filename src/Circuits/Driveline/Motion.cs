using System.Collections.Immutable;

namespace Circuits.Driveline;

/// <summary>What the gear train can do with the clutches that hold.</summary>
public enum MotionKind
{
    /// <summary>Input and output turn at a fixed ratio.</summary>
    Drives,

    /// <summary>The input turns and the output may stand.</summary>
    NoDrive,

    /// <summary>The input cannot turn, or the output cannot turn while it does.</summary>
    TieUp,
}

/// <summary>How the gear train moves with the clutches that hold, while the input turns forwards.</summary>
/// <param name="Kind">Drives, no drive or tie-up.</param>
/// <param name="Mobility">
/// Degrees of freedom: 1 where input and output turn at a ratio, whatever idle members do; 0 in a tie-up; with no
/// drive, those of input, output and all that is linked with either while one-way clutches are free, at least 2.
/// </param>
/// <param name="Ratio">Input speed over output speed, negative for reverse; null unless it drives.</param>
/// <param name="HoldingOneWays">
/// One-way clutches that carry torque. Where one is as good as another, or as a clutch that holds, only what is needed
/// is named: clutches before one-way clutches.
/// </param>
/// <param name="Speeds">
/// Speed of each member per unit of input speed, where it drives; empty otherwise. A member that idles, so that its
/// speed is open, is left out.
/// </param>
public sealed record Motion(
    MotionKind Kind, int Mobility, double? Ratio, ImmutableArray<string> HoldingOneWays,
    ImmutableArray<KeyValuePair<string, double>> Speeds)
{
    /// <summary>
    /// Whether it drives and the output cannot run ahead of the ratio, so that the engine brakes the vehicle. False
    /// where a one-way clutch would overrun.
    /// </summary>
    public bool EngineBraking { get; init; }
}

/// <summary>The torque of a clutch or one-way clutch, where the gear train drives.</summary>
/// <param name="Name">The clutch.</param>
/// <param name="First">Its first member.</param>
/// <param name="Second">Its second member, which gets the opposite torque.</param>
/// <param name="Share">
/// Torque on the first member per unit of input torque; positive the way the input turns.
/// </param>
public readonly record struct Reaction(string Name, string First, string Second, double Share);
