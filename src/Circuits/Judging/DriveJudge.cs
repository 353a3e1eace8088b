using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Model;

namespace Circuits.Judging;

/// <summary>Says in trade words what the driver feels: from the gear train, and from how the clutches are controlled.</summary>
internal sealed class DriveJudge
{
    /// <summary>Ratios closer than this fraction are the same.</summary>
    private const double SameRatio = 0.005;

    private readonly GearTrain train;
    private readonly ImmutableArray<GearState> gears;
    private readonly Motion[] expected;

    public DriveJudge(Unit unit, GearTrain train)
    {
        this.train = train;
        gears = unit.Gears;
        expected = [.. gears.Select(gear => train.Solve([.. gear.Apply.Select(use => use.Name)]))];
    }

    /// <summary>What the gear train does with the clutches that hold.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="clutches">Its clutches, judged.</param>
    /// <param name="settled">Whether the gear settles at all.</param>
    public DriveReport Judge(int gear, ImmutableArray<ClutchReport> clutches, bool settled)
    {
        var motion = train.Solve([.. clutches.Where(clutch => clutch.Strength == ClutchState.Applied).Select(clutch => clutch.Clutch)]);
        var feels = settled ? Feels(gear, motion, clutches) : "comes and goes: the hydraulics never settle";
        return new DriveReport(motion.Mobility, motion.Ratio, feels, expected[gear].Ratio);
    }

    /// <summary>Whether the gear is meant to drive.</summary>
    /// <param name="gear">The gear's number.</param>
    public bool ShouldDrive(int gear) => expected[gear].Kind == MotionKind.Drives;

    /// <summary>Whether two ratios are the same.</summary>
    public static bool Same(double? a, double? b) =>
        a is { } x && b is { } y && Math.Abs(x - y) <= SameRatio * Math.Max(Math.Abs(x), Math.Abs(y));

    private string Feels(int gear, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        if (motion.Kind == MotionKind.TieUp) return $"tie-up in {name}";
        if (!ShouldDrive(gear)) return FeelsInNeutral(name, motion, clutches);
        if (motion.Kind == MotionKind.NoDrive) return FeelsWithoutDrive(gear, clutches);
        if (!Same(motion.Ratio, expected[gear].Ratio)) return FeelsWrongRatio(gear, motion.Ratio!.Value);
        if (clutches.Any(clutch => clutch.Charted && clutch.Verdict == Verdict.Weak)) return $"slips in {name}";
        if (expected[gear].EngineBraking && !motion.EngineBraking) return $"no engine braking in {name}";
        var dragging = clutches.FirstOrDefault(clutch => clutch.Verdict == Verdict.Unwanted);
        if (dragging is not null)
            return dragging.Strength == ClutchState.Applied ? $"drives in {name}, {dragging.Clutch} on as well" : $"drag in {name}: {dragging.Clutch} partly on";
        return "as it should";
    }

    private static string FeelsInNeutral(string name, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        if (motion.Kind == MotionKind.Drives) return motion.Ratio > 0 ? $"creeps forward in {name}" : $"creeps backward in {name}";
        return clutches.Any(clutch => clutch.Verdict == Verdict.Unwanted) ? $"drags in {name}" : "as it should";
    }

    /// <summary>A weak clutch still drags the vehicle along, so weak is slip where a firm one would drive.</summary>
    private string FeelsWithoutDrive(int gear, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        var withWeak = train.Solve([.. clutches.Where(clutch => clutch.Charted && clutch.Strength != ClutchState.Released).Select(clutch => clutch.Clutch)]);
        if (withWeak.Kind == MotionKind.Drives) return $"slips in {name}";
        if (expected[gear].Ratio < 0) return "no reverse";
        return Before(gear) is { } before ? $"no drive in {name}, flare on {before}-{name}" : $"no drive in {name}";
    }

    /// <summary>The gear before this one in shift order, when it is a forward gear too and its ratio is higher.</summary>
    private string? Before(int gear) =>
        gear > 0 && expected[gear - 1].Ratio > expected[gear].Ratio && expected[gear].Ratio > 0 ? gears[gear - 1].Name : null;

    private string FeelsWrongRatio(int gear, double ratio)
    {
        var name = gears[gear].Name;
        if (ratio < 0 != expected[gear].Ratio < 0) return $"wrong direction in {name}";
        var other = Enumerable.Range(0, gears.Length).FirstOrDefault(i => i != gear && Same(expected[i].Ratio, ratio), -1);
        return other < 0 ? $"wrong ratio in {name}" : $"wrong gear: {gears[other].Name} instead of {name}";
    }
}
