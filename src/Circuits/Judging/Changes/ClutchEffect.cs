using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Judging.Changes;

/// <summary>What another way of metering a clutch comes to in the timed changes of gear, against the nearest matched set.</summary>
/// <param name="IsWorse">Whether any change in which the clutch comes on or goes off is worse than with the matched set.</param>
/// <param name="Number">The time that differs most: <c>; direct is off in 14 ms, 234 ms with the matched set</c>; empty where none does.</param>
internal readonly record struct ClutchEffect(bool IsWorse, Phrase Number)
{
    /// <summary>Times closer than this, as a fraction of the longer one, are the same.</summary>
    private const double Same = 0.1;

    /// <summary>What it comes to; null where changes were not timed, or nothing stands beside them.</summary>
    /// <param name="changes">The changes of the assembly.</param>
    /// <param name="clutch">The clutch.</param>
    /// <param name="role">Whether only changes count in which it comes on, or only those in which it goes off; null for both.</param>
    public static ClutchEffect? Of(ImmutableArray<ChangeReport> changes, string clutch, ClutchRole? role = null)
    {
        if (changes.IsEmpty || changes.All(change => change.Matched is null)) return null;
        var (worse, most, number) = (false, Same, Phrase.Empty);
        foreach (var change in changes)
        {
            var here = change.Here.Clutches.FirstOrDefault(each => each.Clutch == clutch && (role is null ? each.Role is ClutchRole.OnComing or ClutchRole.OffGoing : each.Role == role));
            var there = change.Matched?.Clutches.FirstOrDefault(each => each.Clutch == clutch);
            if (here is null || there is null) continue;
            worse |= change.Verdict > ShiftVerdict.NotDecided && !change.SharedByMatched;
            var (now, was) = here.Role == ClutchRole.OnComing ? (here.HoldsMs ?? here.FillMs, there.HoldsMs ?? there.FillMs) : (here.ReleasedMs, there.ReleasedMs);
            if (now is not { } mine || was is not { } its || Math.Max(mine, its) <= 0 || Math.Abs(mine - its) / Math.Max(mine, its) is var apart && apart <= most) continue;
            most = Math.Abs(mine - its) / Math.Max(mine, its);
            number = here.Role == ClutchRole.OnComing
                ? Phrase.Of($"; on {change.Plan.Name} {clutch} holds in {new Duration(mine)}, {new Duration(its)} with the matched set")
                : Phrase.Of($"; on {change.Plan.Name} {clutch} is off in {new Duration(mine)}, {new Duration(its)} with the matched set");
        }

        return new ClutchEffect(worse, number);
    }

    /// <summary>What to add to a finding about the structure.</summary>
    public Phrase Told => IsWorse ? Number : Phrase.Of($"{Number}; no change of gear is worse for it");
}
