using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Judging.Changes;

/// <summary>Which changes of gear a unit makes.</summary>
public static class ShiftPlans
{
    /// <summary>
    /// Engagements from neutral into reverse and into the first gear forwards; every upshift and downshift between gears that follow
    /// one another, as long as the ratio falls; and what else the file times.
    /// </summary>
    /// <param name="unit">The unit.</param>
    public static ImmutableArray<ShiftPlan> Of(Unit unit)
    {
        var train = new ShiftTrain(unit);
        var pairs = new List<(GearState From, GearState To)>();
        if (Neutral(unit, train) is { } neutral)
        {
            if (unit.Gears.FirstOrDefault(gear => train.Ratio(gear) < 0) is { } reverse) pairs.Add((neutral, reverse));
            if (unit.Gears.FirstOrDefault(gear => train.Ratio(gear) > 0) is { } first) pairs.Add((neutral, first));
        }

        var steps = unit.Gears.Zip(unit.Gears.Skip(1)).Where(pair => IsStep(train, pair.First, pair.Second)).ToList();
        pairs.AddRange(steps.Select(pair => (pair.First, pair.Second)));
        pairs.AddRange(steps.Select(pair => (pair.Second, pair.First)).Reverse());
        foreach (var profile in unit.Shifts)
        {
            if (unit.FindGear(profile.From.Name) is { } from && unit.FindGear(profile.To.Name) is { } to) pairs.Add((from, to));
        }

        return [.. pairs.Distinct().Select(pair => Plan(unit, train, pair.From, pair.To))];
    }

    /// <summary>The change from one gear to another.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="from">The gear that it leaves.</param>
    /// <param name="to">The gear that it enters.</param>
    public static ShiftPlan Between(Unit unit, GearState from, GearState to) => Plan(unit, new ShiftTrain(unit), from, to);

    private static ShiftPlan Plan(Unit unit, ShiftTrain train, GearState from, GearState to) => new(
        from, to, Kind(train.Ratio(from), train.Ratio(to)),
        unit.Shifts.FirstOrDefault(shift => shift.From.Name == from.Name && shift.To.Name == to.Name));

    private static ShiftKind Kind(double? from, double? to)
    {
        if (to is null) return ShiftKind.Release;
        if (from is null || Math.Sign(from.Value) != Math.Sign(to.Value)) return ShiftKind.Engagement;
        return Math.Abs(to.Value) <= Math.Abs(from.Value) ? ShiftKind.Upshift : ShiftKind.Downshift;
    }

    private static GearState? Neutral(Unit unit, ShiftTrain train)
    {
        var idle = unit.Gears.Where(gear => gear.Apply.IsEmpty && train.Ratio(gear) is null).ToList();
        return idle.FirstOrDefault(gear => gear.Name == "N") ?? idle.FirstOrDefault(gear => gear.Lever?.Name == "N") ?? idle.FirstOrDefault();
    }

    private static bool IsStep(ShiftTrain train, GearState from, GearState to)
    {
        if (train.Ratio(from) is not > 0 || train.Ratio(to) is not > 0) return false;

        // Where nothing says what the ratios are, the order of the file has to.
        return !(train.IsKnown || (from.Ratio is not null && to.Ratio is not null)) || train.Ratio(to) < train.Ratio(from);
    }
}
