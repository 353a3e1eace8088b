using System.Collections.Immutable;
using Circuits.Judging;

namespace Circuits.Studies.Hazards;

/// <summary>
/// How bad it is for the people in and around the vehicle, from nothing to worst. A scale of this program's own; it follows the order in which the
/// trade fears things, and is judgement, no source. <see cref="SeverityScale"/> says what falls under which.
/// </summary>
public enum HazardSeverity
{
    /// <summary>0: nothing is felt.</summary>
    None,

    /// <summary>1: felt, and no harm soon: harsh, late, a wrong ratio, no engine braking.</summary>
    Felt,

    /// <summary>2: a clutch slips or drags, in a gear or on the way into it, and burns.</summary>
    Burns,

    /// <summary>3: the vehicle moves, or strains to move, where it should stand.</summary>
    Creeps,

    /// <summary>4: the vehicle no longer drives, or not for certain: it stops in traffic, or does not come back.</summary>
    LosesDrive,

    /// <summary>5: it drives the other way, or falls into a much lower gear at road speed.</summary>
    WrongDirection,

    /// <summary>6: the drive locks at road speed.</summary>
    Locks,

    /// <summary>7: the unit destroys itself, mostly unfelt: a part runs dry or bears more pressure than it is made for.</summary>
    Destroys,
}

/// <summary>One step of the scale.</summary>
/// <param name="Severity">The step.</param>
/// <param name="Word">Its word.</param>
/// <param name="Meaning">What it means.</param>
public readonly record struct SeverityStep(HazardSeverity Severity, string Word, string Meaning);

/// <summary>What falls under which severity; the one place where that is decided.</summary>
public static class SeverityScale
{
    /// <summary>From here on the vehicle must not be driven.</summary>
    public const HazardSeverity MustNotBeDriven = HazardSeverity.Creeps;

    /// <summary>A gear whose ratio is this many times the one that is asked for turns engine or wheels by surprise. Judgement, no source.</summary>
    public const double MuchLower = 1.5;

    /// <summary>The steps, worst first.</summary>
    public static ImmutableArray<SeverityStep> Steps { get; } =
    [
        new(HazardSeverity.Destroys, "destroys", "the unit destroys itself: a part runs dry, or bears more pressure than it is made for"),
        new(HazardSeverity.Locks, "locks", "tie-up in a forward gear: the drive may lock at road speed"),
        new(HazardSeverity.WrongDirection, "wrong-direction", "drives the other way, or falls into a much lower gear at road speed"),
        new(HazardSeverity.LosesDrive, "loses-drive", "no drive, drive that comes and goes or never comes to hold, or a tie-up at standstill"),
        new(HazardSeverity.Creeps, "creeps", "moves or strains to move where it should stand"),
        new(HazardSeverity.Burns, "burns", "a clutch slips, drags or is one too many, in a gear or on the way into it, and burns"),
        new(HazardSeverity.Felt, "felt", "harsh, late, another ratio, or no engine braking"),
        new(HazardSeverity.None, "none", "nothing is felt in any gear"),
    ];

    /// <summary>A step by its severity.</summary>
    /// <param name="severity">The severity.</param>
    public static SeverityStep Of(HazardSeverity severity) => Steps[(int)HazardSeverity.Destroys - (int)severity];

    /// <summary>How bad it is that something is felt in a gear.</summary>
    /// <param name="kind">What is felt.</param>
    /// <param name="gear">What the gear is for.</param>
    /// <param name="instead">For a wrong gear, the ratio that it drives in; else null.</param>
    public static HazardSeverity Of(FeelKind kind, GearPurpose gear, double? instead) => kind switch
    {
        FeelKind.AsItShould => HazardSeverity.None,
        FeelKind.Starved or FeelKind.OverPressure => HazardSeverity.Destroys,
        FeelKind.TieUp => gear.IsForward ? HazardSeverity.Locks : HazardSeverity.LosesDrive,
        FeelKind.WrongDirection => HazardSeverity.WrongDirection,
        FeelKind.WrongGear when gear.IsForward && instead / gear.Ratio >= MuchLower => HazardSeverity.WrongDirection,
        FeelKind.NoDrive or FeelKind.NeverSettles or FeelKind.NeverComes => HazardSeverity.LosesDrive,
        FeelKind.CreepsForward or FeelKind.CreepsBackward => HazardSeverity.Creeps,
        FeelKind.Drags when !gear.Drives => HazardSeverity.Creeps,
        FeelKind.Slips or FeelKind.Drags or FeelKind.OneTooMany or FeelKind.Flares or FeelKind.TiesUpOnTheWay => HazardSeverity.Burns,
        _ => HazardSeverity.Felt,
    };
}

/// <summary>What a gear is for.</summary>
/// <param name="Drives">Whether the vehicle should move in it.</param>
/// <param name="Ratio">Its ratio, negative for reverse; null where the file gives no gear train, and in neutral.</param>
public readonly record struct GearPurpose(bool Drives, double? Ratio)
{
    /// <summary>Whether it drives forward; a gear whose ratio is not known counts as one that does.</summary>
    public bool IsForward => Drives && Ratio is not < 0;
}
