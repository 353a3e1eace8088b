using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Hazards;

/// <summary>Adds to a unit's gears what its lever leaves when no solenoid has current.</summary>
internal static class HazardStates
{
    /// <summary>
    /// The unit with a gear more for each position of the lever without current, unless the file has that gear already. What these gears should
    /// apply is what the assembly applies in them. A unit without solenoids has nothing to lose, and stays as it is.
    /// </summary>
    /// <param name="assembly">The assembly without faults.</param>
    /// <param name="mode">What verdicts rest on.</param>
    /// <returns>The unit, and the names of the gears without current: those added, and those of the file.</returns>
    public static (Unit Unit, ImmutableHashSet<string> Dead) Of(Assembly assembly, JudgeMode mode)
    {
        var unit = assembly.Unit;
        if (assembly.Revisions.All(revision => revision.Solenoids.IsEmpty)) return (unit, []);
        var known = unit.Gears.Where(gear => gear.Energize.IsEmpty && gear.Commands.IsEmpty).ToList();
        var taken = unit.Gears.Select(gear => gear.Name).ToHashSet();
        ImmutableArray<GearState> added =
        [
            .. unit.Gears.Where(gear => !known.Exists(its => its.Lever?.Name == gear.Lever?.Name)).DistinctBy(gear => gear.Lever?.Name)
                .Select(gear => new GearState(NameOf(gear, taken), [], gear.Place) { Lever = gear.Lever, Signals = gear.Signals }),
        ];
        ImmutableHashSet<string> dead = [.. added.Concat(known).Select(gear => gear.Name)];
        if (added.IsEmpty) return (unit, dead);
        var asked = unit with { Gears = unit.Gears.AddRange(added) };
        var report = new UnitJudge(asked, mode).Report(assembly.In(asked), timed: false);
        var chart = added.Select(gear => gear with
        {
            Apply = [.. report.Gears.First(its => its.Gear == gear.Name).Clutches.Where(clutch => clutch.Strength == ClutchState.Applied).Select(clutch => new NameUse(clutch.Clutch, gear.Place))],
        });
        return (unit with { Gears = unit.Gears.AddRange(chart) }, dead);
    }

    private static string NameOf(GearState gear, HashSet<string> taken)
    {
        var name = gear.Lever is { } lever ? $"{lever.Name}-no-current" : "no-current";
        while (!taken.Add(name)) name += "-2";
        return name;
    }
}
