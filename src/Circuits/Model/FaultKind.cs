using System.Collections.Immutable;

namespace Circuits.Model;

/// <summary>What can be wrong with a unit.</summary>
public enum FaultKind
{
    /// <summary>A part is of another revision than it should be.</summary>
    WrongRevision,

    /// <summary>A ball is left out.</summary>
    BallLeftOut,

    /// <summary>A ball too many, in a pocket that has none.</summary>
    BallMisplaced,

    /// <summary>A ball of another size.</summary>
    BallWrongSize,

    /// <summary>A hole is plugged: by debris, or by a gasket without its window.</summary>
    HolePlugged,

    /// <summary>A hole is worn or drilled larger.</summary>
    HoleWorn,

    /// <summary>Oil crosses from a passage to its neighbour: a wall that is cracked, eaten away or not clamped.</summary>
    PassagesLeak,

    /// <summary>A spool does not leave its rest.</summary>
    ValveStuckAtRest,

    /// <summary>A spool does not come back.</summary>
    ValveStuckMoved,

    /// <summary>A spool stands between its positions.</summary>
    ValveStuckMidway,

    /// <summary>A regulator is stuck open.</summary>
    RegulatorStuckOpen,

    /// <summary>A regulator is stuck shut.</summary>
    RegulatorStuckShut,

    /// <summary>A reducing regulator is stuck with its outlet drained.</summary>
    RegulatorStuckDrained,

    /// <summary>A spring is missing or broken.</summary>
    SpringMissing,

    /// <summary>A solenoid's outlet is drained, whatever it is told.</summary>
    SolenoidStuckLow,

    /// <summary>A solenoid's outlet has its whole feed, whatever it is told.</summary>
    SolenoidStuckHigh,

    /// <summary>A solenoid of the other polarity is fitted.</summary>
    SolenoidReversed,

    /// <summary>A clutch's piston seal lets oil past.</summary>
    SealLeaking,

    /// <summary>A way to sump is partly stopped up.</summary>
    ExhaustRestricted,

    /// <summary>A screen is clogged.</summary>
    ScreenClogged,

    /// <summary>A screen is torn, or left out.</summary>
    ScreenOut,

    /// <summary>A screen's bypass is stuck open.</summary>
    BypassStuckOpen,

    /// <summary>A screen's bypass is stuck shut.</summary>
    BypassStuckShut,

    /// <summary>Two sheets of a joint lie in each other's place.</summary>
    SheetsSwapped,
}

/// <summary>A kind of fault, by the word that files and options use.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Word">Its word.</param>
/// <param name="Weight">How likely one such fault is against another, unless the file says otherwise. Judgement, no source.</param>
public readonly record struct FaultKindInfo(FaultKind Kind, string Word, double Weight);

/// <summary>Every kind of fault.</summary>
public static class FaultKinds
{
    /// <summary>
    /// The kinds, in the order of <see cref="FaultKind"/>. Weights are judgement: mixed revisions and lost balls lead after an overhaul,
    /// seals and sticking valves in use; worn holes and swapped sheets are rare.
    /// </summary>
    public static ImmutableArray<FaultKindInfo> All { get; } =
    [
        new(FaultKind.WrongRevision, "wrong-revision", 8),
        new(FaultKind.BallLeftOut, "ball-left-out", 8),
        new(FaultKind.BallMisplaced, "ball-misplaced", 1),
        new(FaultKind.BallWrongSize, "ball-wrong-size", 2),
        new(FaultKind.HolePlugged, "hole-plugged", 2),
        new(FaultKind.HoleWorn, "hole-worn", 1),
        new(FaultKind.PassagesLeak, "passages-leak", 2),
        new(FaultKind.ValveStuckAtRest, "valve-stuck-at-rest", 5),
        new(FaultKind.ValveStuckMoved, "valve-stuck-moved", 4),
        new(FaultKind.ValveStuckMidway, "valve-stuck-midway", 1),
        new(FaultKind.RegulatorStuckOpen, "regulator-stuck-open", 2),
        new(FaultKind.RegulatorStuckShut, "regulator-stuck-shut", 2),
        new(FaultKind.RegulatorStuckDrained, "regulator-stuck-drained", 2),
        new(FaultKind.SpringMissing, "spring-missing", 2),
        new(FaultKind.SolenoidStuckLow, "solenoid-stuck-low", 5),
        new(FaultKind.SolenoidStuckHigh, "solenoid-stuck-high", 4),
        new(FaultKind.SolenoidReversed, "solenoid-reversed", 2),
        new(FaultKind.SealLeaking, "seal-leaking", 6),
        new(FaultKind.ExhaustRestricted, "exhaust-restricted", 1),
        new(FaultKind.ScreenClogged, "screen-clogged", 4),
        new(FaultKind.ScreenOut, "screen-out", 1),
        new(FaultKind.BypassStuckOpen, "bypass-stuck-open", 1),
        new(FaultKind.BypassStuckShut, "bypass-stuck-shut", 1),
        new(FaultKind.SheetsSwapped, "sheets-swapped", 1),
    ];

    /// <summary>A kind's word and weight.</summary>
    /// <param name="kind">The kind.</param>
    public static FaultKindInfo Of(FaultKind kind) => All[(int)kind];
}
