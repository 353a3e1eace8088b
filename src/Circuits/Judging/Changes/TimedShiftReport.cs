using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Judging.Changes;

/// <summary>What a shift came to; from best to worst.</summary>
public enum ShiftVerdict
{
    /// <summary>Nothing to complain of.</summary>
    Good,

    /// <summary>What it comes to hangs on a size that the file does not give.</summary>
    NotDecided,

    /// <summary>A clutch takes the torque too suddenly.</summary>
    Harsh,

    /// <summary>The gear comes late.</summary>
    Delayed,

    /// <summary>For a time too little capacity holds the torque: the engine runs up.</summary>
    Flare,

    /// <summary>For a time clutches work against each other.</summary>
    TieUp,

    /// <summary>A clutch of the gear that is entered does not come to hold its torque.</summary>
    NeverHolds,

    /// <summary>There is no answer; no number of the shift is one.</summary>
    DidNotConverge,
}

/// <summary>What a clutch has to do in a shift.</summary>
public enum ClutchRole
{
    /// <summary>It comes on.</summary>
    OnComing,

    /// <summary>It goes off.</summary>
    OffGoing,

    /// <summary>It stays on.</summary>
    Holding,

    /// <summary>It is in neither gear's chart.</summary>
    Uncharted,
}

/// <summary>Under what conditions shifts are timed.</summary>
/// <param name="Celsius">Oil temperature, degC.</param>
/// <param name="StandingSpeed">Pump speed while a gear is engaged from no drive, rpm.</param>
/// <param name="DrivingSpeed">Pump speed in all other shifts, rpm.</param>
/// <param name="Torque">Torque at the input, N m; null for what the file gives, or what is assumed.</param>
public sealed record ShiftConditions(double Celsius, double StandingSpeed, double DrivingSpeed, double? Torque);

/// <summary>A clutch in a shift. Times in ms since the shift began, null where it does not come to it.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Role">What it has to do.</param>
public sealed record ShiftClutch(string Clutch, ClutchRole Role)
{
    /// <summary>Torque that it carries in the gear that is left, N m.</summary>
    public double NeedBefore { get; init; }

    /// <summary>Torque that it must carry in the gear that is entered, N m.</summary>
    public double NeedAfter { get; init; }

    /// <summary>When its plates touch; null for a clutch that is on at the start.</summary>
    public double? FillMs { get; init; }

    /// <summary>From when on it can carry what it must.</summary>
    public double? HoldsMs { get; init; }

    /// <summary>From touching to holding.</summary>
    public double? RiseMs => HoldsMs - FillMs;

    /// <summary>When it no longer can carry what it carried.</summary>
    public double? LetsGoMs { get; init; }

    /// <summary>From when on it carries nothing.</summary>
    public double? ReleasedMs { get; init; }

    /// <summary>From when on its piston is back on its stop; one that is not drags, and takes hold again soon.</summary>
    public double? EmptyMs { get; init; }

    /// <summary>Torque capacity at the end, N m.</summary>
    public double CapacityAfter { get; init; }

    /// <summary>The highest torque capacity on the way, N m.</summary>
    public double Peak { get; init; }
}

/// <summary>A sample of a shift.</summary>
/// <param name="Ms">Time since the shift began, ms.</param>
/// <param name="LineKilopascals">Pressure at the pump.</param>
/// <param name="Clutches">Each clutch's pressure (kPa), share of its stroke, and torque capacity (N m), in the order of the shift's clutches.</param>
public sealed record ShiftSample(double Ms, double LineKilopascals, ImmutableArray<(double Kilopascals, double Stroke, double Capacity)> Clutches);

/// <summary>A shift of one assembly, timed.</summary>
/// <param name="Plan">The shift.</param>
/// <param name="Torque">Torque at the input, N m.</param>
/// <param name="Verdict">What it came to.</param>
public sealed record TimedShiftReport(ShiftPlan Plan, double Torque, ShiftVerdict Verdict)
{
    /// <summary>Why; empty for a good shift.</summary>
    public Phrase Reason { get; init; } = Phrase.Empty;

    /// <summary>Every clutch that has to do something or does something, on-coming ones first.</summary>
    public ImmutableArray<ShiftClutch> Clutches { get; init; } = [];

    /// <summary>From when on the gear that is entered holds; null where it does not.</summary>
    public double? HoldsMs { get; init; }

    /// <summary>When the gear that is left lets go; null where it does not, or where no clutch has to.</summary>
    public double? LetsGoMs { get; init; }

    /// <summary>From letting go to holding, ms; less than zero where the two overlap.</summary>
    public double? GapMs => HoldsMs - LetsGoMs;

    /// <summary>The longest time without a break in which too little capacity holds the torque, ms.</summary>
    public double FlareMs { get; init; }

    /// <summary>The longest time without a break in which clutches work against each other, ms.</summary>
    public double TieUpMs { get; init; }

    /// <summary>How long was looked, ms.</summary>
    public double EndMs { get; init; }

    /// <summary>What was lost of the oil that was pumped, as a fraction: how exactly the sum came out.</summary>
    public double Lost { get; init; }

    /// <summary>The shift over time.</summary>
    public ImmutableArray<ShiftSample> Samples { get; init; } = [];
}

/// <summary>The same shift of two assemblies.</summary>
/// <param name="Here">The assembly that was asked for.</param>
/// <param name="Beside">The one that it is held against, or null.</param>
public sealed record ShiftPair(TimedShiftReport Here, TimedShiftReport? Beside);
