using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Reading;
using Circuits.Stacking.Rules;

namespace Circuits.Judging;

/// <summary>Every rule that a finding can name, with its explanation.</summary>
public static class RuleCatalogue
{
    private static readonly Lazy<ImmutableArray<Rule>> Listed = new(List);

    /// <summary>All rules, by name; listed when they are first asked for, which few commands do.</summary>
    public static ImmutableArray<Rule> All => Listed.Value;

    private static ImmutableArray<Rule> List() =>
    [
        .. ReadingRules.All
            .Concat(DrivelineRules.All)
            .Concat([
                SeatWillNotSeal.Rule, BallFallsThrough.Rule, BallWithoutPocket.Rule, DividedPocket.Rule, MissingName.Rule,
                UnregulatedLine.Rule, FillContradicted.Rule, ExpectationNotMet.Rule, VerdictChanged.Rule, VerdictChanged.NotCompared,
                NeverHolds.Rule, NotDecided.Rule, ShiftFlare.Rule, ShiftTieUp.Rule, DelayedShift.Rule, HarshShift.Rule, NoSuchHole.Rule,
                HazardDestroys.Rule, HazardLocks.Rule, HazardWrongDirection.Rule, HazardLosesDrive.Rule, HazardCreeps.Rule,
            ])
            .Concat(ChangeRules.All)
            .Concat(DiagnosisRules.All)
            .Concat(GearRules.Select(rule => rule.Rule))
            .Concat(AssemblyRules.Select(rule => rule.Rule))
            .OrderBy(rule => rule.Name, StringComparer.Ordinal),
    ];

    /// <summary>Rules that look at one gear at a time, in the order of their findings.</summary>
    internal static ImmutableArray<GearRule> GearRules =>
    [
        new NeverSettles(), new NoFlowAnswer(), new LostSupply(), new BlankedFeed(), new WeakSupply(), new UnwantedSupply(), new Starved(), new TooMuchPressure(), new LineLow(), new LineHigh(), new CrossFeedFound(),
        new OpenDrain(), new TrappedOil(), new TieUp(), new NoDrive(), new WrongRatio(), new WrongFromNeighbours(), new DependsOnHistory(),
    ];

    /// <summary>Rules that look at a whole assembly.</summary>
    internal static ImmutableArray<AssemblyRule> AssemblyRules => [new Unmetered(), new ControlChanged(), new NoWayToSump(), new SolenoidReversed(), new NeverRegulates(), new AssumedSize()];

    /// <summary>The rule of that name, or null.</summary>
    /// <param name="name">The rule's name.</param>
    public static Rule? Find(string name) => All.FirstOrDefault(rule => rule.Name == name);
}
