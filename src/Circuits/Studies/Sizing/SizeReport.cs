using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Sizing;

/// <summary>Which time of a shift a hole is to give.</summary>
public enum WantedTime
{
    /// <summary>When the clutch that comes on touches.</summary>
    Fill,

    /// <summary>From when on the gear holds.</summary>
    Hold,

    /// <summary>When the clutch that goes off lets go; where it carries nothing, from when on it is off.</summary>
    Release,

    /// <summary>From letting go to holding; less than zero is an overlap.</summary>
    Gap,
}

/// <summary>What a hole is wanted for.</summary>
/// <param name="Location">Where: <c>plate@21</c>.</param>
/// <param name="Shift">The shift.</param>
/// <param name="Time">Which of its times.</param>
/// <param name="Ms">The time wanted, ms.</param>
/// <param name="Clutch">The clutch meant; null where only one comes into question.</param>
/// <param name="Least">The smallest diameter to try, mm.</param>
/// <param name="Most">The largest, mm; null for the largest that a ball there still closes, else 10 mm.</param>
public sealed record SizeRequest(string Location, ShiftPlan Shift, WantedTime Time, double Ms, string? Clutch, double Least, double? Most);

/// <summary>How a search for a hole ended.</summary>
public enum SizeOutcome
{
    /// <summary>A hole gives the time wanted.</summary>
    Found,

    /// <summary>No hole between the smallest and the largest gives it: no bracket was found.</summary>
    OutOfRange,

    /// <summary>The hole makes no difference to that time.</summary>
    Unaffected,

    /// <summary>The time jumps past the one wanted at some diameter, so that the search stalls there.</summary>
    Jumps,
}

/// <summary>A diameter and the time that it gives.</summary>
/// <param name="Millimetres">The diameter.</param>
/// <param name="Ms">The time; null where it never comes to it.</param>
public sealed record SizedHole(double Millimetres, double? Ms)
{
    /// <summary>The number drill of that diameter, or null.</summary>
    public int? Drill { get; init; }
}

/// <summary>A shift that the hole changes.</summary>
/// <param name="Before">With the hole as it is.</param>
/// <param name="After">With the hole found.</param>
public sealed record ShiftChange(TimedShiftReport Before, TimedShiftReport After);

/// <summary>The hole for a wanted time.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="Request">What was asked for.</param>
/// <param name="Clutch">The clutch meant, or null where the time is the gear's.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Now">The hole as it is; null for metal or an opening without a size.</param>
/// <param name="Hole">The hole found, or null.</param>
public sealed record SizeReport(Assembly Assembly, SizeRequest Request, string? Clutch, SizeOutcome Outcome, SizedHole? Now, SizedHole? Hole)
{
    /// <summary>The matched sets that share most parts with the assembly.</summary>
    public ImmutableArray<string> NearestMatched => [.. Assembly.NearestOf(Assembly.Unit.Matched, set => Model.Assembly.Of(Assembly.Unit, set)).Select(set => set.Name)];

    /// <summary>The change that makes it, or null.</summary>
    public Change? Work { get; init; }

    /// <summary>The nearest number drill below, or null.</summary>
    public SizedHole? DrillBelow { get; init; }

    /// <summary>The nearest number drill above, or null.</summary>
    public SizedHole? DrillAbove { get; init; }

    /// <summary>What other holes that were tried give, by rising diameter.</summary>
    public ImmutableArray<SizedHole> Tried { get; init; } = [];

    /// <summary>Holes that give the same time; the nearest to the hole as it is was taken.</summary>
    public int Solutions { get; init; }

    /// <summary>Gears that the hole changes, with before and after.</summary>
    public ImmutableArray<GearDifference> Gears { get; init; } = [];

    /// <summary>Shifts that it changes, with before and after.</summary>
    public ImmutableArray<ShiftChange> Shifts { get; init; } = [];

    /// <summary>What was assumed, as a sentence each.</summary>
    public ImmutableArray<Phrase> Assumptions { get; init; } = [];

    /// <summary>What comes with the hole that was not there before.</summary>
    public ImmutableArray<Findings.Finding> Findings { get; init; } = [];

    /// <summary>How far its times spread within the tolerances of sizes, or null when that was not asked for.</summary>
    public SizeSpread? Spread { get; init; }

    /// <summary>Why no hole was found, in one sentence; empty when one was.</summary>
    public Phrase Reason
    {
        get
        {
            var range = Phrase.Of($"{new Length(Request.Least):bare} to {new Length(Request.Most!.Value)}");
            var times = Tried.Select(hole => hole.Ms).OfType<double>().ToList();
            var given = times.Count == 0 ? Phrase.Of($"none of them comes to it at all")
                : Phrase.Of($"they give {new Duration(times.Min()):bare} to {new Duration(times.Max())}{(times.Count < Tried.Length ? Phrase.Of($", or never") : null)}");
            return Outcome switch
            {
                SizeOutcome.Found => Phrase.Empty,
                SizeOutcome.OutOfRange => Phrase.Of($"out of range: no hole from {range} does it; {given}"),
                SizeOutcome.Unaffected => Phrase.Of($"unaffected: holes from {range} make no difference to it; {given}"),
                _ => Phrase.Of($"stalled: at {new Length(Hole!.Millimetres)} the time jumps past it; {given}"),
            };
        }
    }
}
