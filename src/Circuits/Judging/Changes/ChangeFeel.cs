using System.Collections.Immutable;

namespace Circuits.Judging.Changes;

/// <summary>What the driver feels on the way into a gear that itself is as it should be: what the timed changes into it come to.</summary>
internal static class ChangeFeel
{
    /// <summary>A gear's report with it.</summary>
    /// <param name="gear">The gear.</param>
    /// <param name="changes">The changes of the assembly.</param>
    public static GearReport With(GearContext gear, ImmutableArray<ChangeReport> changes)
    {
        if (gear.Report.Drive is not { Feel.Kind: FeelKind.AsItShould } drive) return gear.Report;
        return Into(gear.Gear, changes) is { } felt ? gear.Report with { Drive = drive with { Feel = felt } } : gear.Report;
    }

    /// <summary>What the worst change into a gear comes to; null where all are good, or no worse than with the matched set.</summary>
    /// <param name="gear">The gear's name.</param>
    /// <param name="changes">The changes of the assembly.</param>
    public static Feel? Into(string gear, ImmutableArray<ChangeReport> changes)
    {
        ChangeReport? worst = null;
        foreach (var change in changes)
        {
            if (change.Plan.To.Name != gear || !IsWorse(change)) continue;
            if (worst is null || change.Verdict > worst.Verdict) worst = change;
        }

        return worst is null ? null : Of(worst);
    }

    /// <summary>The changes that are worse than good, and worse than with the matched set.</summary>
    /// <param name="changes">The changes of the assembly.</param>
    public static ImmutableArray<ChangeBehaviour> Behaviour(ImmutableArray<ChangeReport> changes) =>
    [
        .. changes.Where(IsWorse).Select(change => new ChangeBehaviour(change.Plan.Name, change.At.Name, change.Verdict, Of(change))),
    ];

    private static bool IsWorse(ChangeReport change) => !change.SharedByMatched && change.Verdict != ShiftVerdict.Good;

    private static Feel Of(ChangeReport change) => new(
        change.Verdict switch
        {
            ShiftVerdict.NotDecided => FeelKind.Undecided,
            ShiftVerdict.Harsh => FeelKind.Harsh,
            ShiftVerdict.Delayed => FeelKind.Delayed,
            ShiftVerdict.Flare => FeelKind.Flares,
            ShiftVerdict.TieUp => FeelKind.TiesUpOnTheWay,
            _ => FeelKind.NeverComes,
        },
        change.Plan.To.Name)
    {
        Other = change.Plan.From.Name,
        Clutch = change.Here.Clutches.FirstOrDefault(clutch => clutch.Role == (change.Verdict == ShiftVerdict.TieUp ? ClutchRole.OffGoing : ClutchRole.OnComing))?.Clutch,
    };
}
