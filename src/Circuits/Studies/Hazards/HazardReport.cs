using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;

namespace Circuits.Studies.Hazards;

/// <summary>What something wrong comes to in one gear.</summary>
/// <param name="Gear">The gear.</param>
/// <param name="NoCurrent">Whether it is one in which no solenoid has current.</param>
/// <param name="Severity">How bad that is.</param>
/// <param name="Feel">What is felt.</param>
/// <param name="Local">Which clutches are otherwise on than they should be.</param>
public sealed record HazardEffect(string Gear, bool NoCurrent, HazardSeverity Severity, Feel Feel, ImmutableArray<LocalEffect> Local);

/// <summary>A clutch that is otherwise on than it should be: <c>direct off</c>.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Charted">Whether it should be on.</param>
/// <param name="Strength">How strongly it is on.</param>
public sealed record LocalEffect(string Clutch, bool Charted, ClutchState Strength);

/// <summary>A gauge reading that shows it.</summary>
/// <param name="Tap">The gauge port.</param>
/// <param name="Gear">The gear.</param>
/// <param name="Right">What it should read, kPa.</param>
/// <param name="Found">What it reads, kPa.</param>
public sealed record HazardReading(string Tap, string Gear, double Right, double Found);

/// <summary>One failure mode: a row of the table.</summary>
/// <param name="Mode">The failure mode.</param>
/// <param name="Code">Its code, <c>ball-left-out balls.range</c>, or the change as it was asked for.</param>
/// <param name="Item">The item that fails.</param>
/// <param name="Function">What the item is for.</param>
/// <param name="Place">The line that describes it.</param>
/// <param name="Weight">How likely it is against others; null for what was asked for.</param>
/// <param name="Effects">What it comes to, worst first; gears in which nothing is felt are left out.</param>
/// <param name="Reading">The gauge reading that shows it best, standing if any does; null where none does.</param>
public sealed record HazardRow(
    Phrase Mode, string Code, string Item, string Function, Place Place, double? Weight, ImmutableArray<HazardEffect> Effects, HazardReading? Reading)
{
    /// <summary>How bad its worst effect is.</summary>
    public HazardSeverity Severity => Effects.IsEmpty ? HazardSeverity.None : Effects[0].Severity;

    /// <summary>Whether changes of gear were timed with it; they are where a vehicle with it may be driven.</summary>
    public bool ChangesTimed { get; init; }

    /// <summary>The stop rule: whether a vehicle with it must not be driven.</summary>
    public bool MustNotBeDriven => Severity >= SeverityScale.MustNotBeDriven;
}

/// <summary>A failure mode and effects table.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="NearestMatched">The matched sets that it is held against.</param>
/// <param name="Gears">Every gear and every state without current, in order.</param>
/// <param name="AsFitted">What the assembly comes to without any fault, worst first.</param>
/// <param name="Rows">The failure modes, worst first; of equals the likeliest.</param>
/// <param name="Asked">Whether the rows are what was asked for, instead of all that can fail.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Findings">What must not be driven.</param>
public sealed record HazardReport(
    Assembly Assembly, ImmutableArray<string> NearestMatched, ImmutableArray<string> Gears, ImmutableArray<HazardEffect> AsFitted,
    ImmutableArray<HazardRow> Rows, bool Asked, ImmutableArray<Phrase> Assumptions, ImmutableArray<Finding> Findings)
{
    /// <summary>What the effects rest on.</summary>
    public required JudgeMode Mode { get; init; }

    /// <summary>The conditions at which gears were judged; empty for the static answer.</summary>
    public required ImmutableArray<OperatingPoint> Points { get; init; }
}
