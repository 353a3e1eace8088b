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
    private readonly HashSet<string> inTrain;
    private readonly Motion[] expected;
    private readonly Dictionary<string, Motion> known = [];

    public DriveJudge(Unit unit, GearTrain train)
    {
        this.train = train;
        gears = unit.Gears;
        inTrain = [.. unit.GearSet!.Clutches.Select(clutch => clutch.Name)];
        expected = [.. gears.Select(gear => MotionOf([.. gear.Apply.Select(use => use.Name)]))];
    }

    /// <summary>What the gear train does with the clutches that hold.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="clutches">Its clutches, judged.</param>
    /// <param name="settled">Whether the gear settles at all.</param>
    public DriveReport Judge(int gear, ImmutableArray<ClutchReport> clutches, bool settled)
    {
        var motion = MotionOf(NamesOf(clutches, static clutch => clutch.Strength == ClutchState.Applied));
        var feel = settled ? Feels(gear, motion, clutches) : new Feel(FeelKind.NeverSettles, gears[gear].Name);
        return new DriveReport(motion.Mobility, motion.Ratio, feel, expected[gear].Ratio);
    }

    /// <summary>Whether the gear is meant to drive.</summary>
    /// <param name="gear">The gear's number.</param>
    public bool ShouldDrive(int gear) => expected[gear].Kind == MotionKind.Drives;

    /// <summary>The ratio that a gear's charted clutches give, or null.</summary>
    /// <param name="gear">The gear's number.</param>
    public double? RatioOf(int gear) => expected[gear].Ratio;

    /// <summary>Whether two ratios are the same.</summary>
    public static bool Same(double? a, double? b) =>
        a is { } x && b is { } y && Math.Abs(x - y) <= SameRatio * Math.Max(Math.Abs(x), Math.Abs(y));

    /// <summary>What the gear train does with clutches that hold; each set of them is worked out once.</summary>
    private Motion MotionOf(List<string> holding)
    {
        var key = string.Join('\n', holding);
        lock (known)
        {
            if (known.TryGetValue(key, out var motion)) return motion;
            return known[key] = train.Solve(holding);
        }
    }

    private static List<string> NamesOf(ImmutableArray<ClutchReport> clutches, Predicate<ClutchReport> which)
    {
        var names = new List<string>();
        foreach (var clutch in clutches)
        {
            if (which(clutch)) names.Add(clutch.Clutch);
        }

        return names;
    }

    private Feel Feels(int gear, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        if (motion.Kind == MotionKind.TieUp) return new(FeelKind.TieUp, name);
        if (!ShouldDrive(gear)) return FeelsInNeutral(name, motion, clutches);
        if (motion.Kind == MotionKind.NoDrive) return FeelsWithoutDrive(gear, clutches);
        if (!Same(motion.Ratio, expected[gear].Ratio)) return FeelsWrongRatio(gear, motion.Ratio!.Value, clutches);
        if (clutches.Any(clutch => clutch.Charted && clutch.Verdict == Verdict.Weak)) return new(FeelKind.Slips, name);
        if (expected[gear].EngineBraking && !motion.EngineBraking) return new(FeelKind.NoEngineBraking, name);
        if (clutches.FirstOrDefault(clutch => clutch.Verdict is Verdict.Lost or Verdict.Weak && !inTrain.Contains(clutch.Clutch)) is { } open)
            return new(FeelKind.NoLockUp, name) { Clutch = open.Clutch };
        var dragging = clutches.FirstOrDefault(clutch => clutch.Verdict == Verdict.Unwanted);
        if (dragging is not null)
        {
            if (!inTrain.Contains(dragging.Clutch)) return new(FeelKind.StaysLocked, name) { Clutch = dragging.Clutch };
            return dragging.Strength == ClutchState.Applied
                ? new(FeelKind.OneTooMany, name) { Clutch = dragging.Clutch }
                : new(FeelKind.Drags, name) { Clutch = dragging.Clutch };
        }

        return Feel.AsItShould;
    }

    private Feel FeelsInNeutral(string name, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        if (motion.Kind == MotionKind.Drives)
        {
            return motion.Ratio > 0
                ? new(FeelKind.CreepsForward, name)
                : new(FeelKind.CreepsBackward, name);
        }

        var unwanted = clutches.Where(clutch => clutch.Verdict == Verdict.Unwanted).ToList();
        return unwanted.Exists(clutch => inTrain.Contains(clutch.Clutch)) ? new(FeelKind.Drags, name)
            : unwanted.Count > 0 ? new(FeelKind.StaysLocked, name) { Clutch = unwanted[0].Clutch }
            : Feel.AsItShould;
    }

    /// <summary>A weak clutch still drags the vehicle along, so weak is slip where a firm one would drive.</summary>
    private Feel FeelsWithoutDrive(int gear, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        var withWeak = MotionOf(NamesOf(clutches, static clutch => clutch.Charted && clutch.Strength != ClutchState.Released));
        if (withWeak.Kind == MotionKind.Drives) return new(FeelKind.Slips, name);
        if (expected[gear].Ratio < 0) return new(FeelKind.NoDrive, name) { IsReverse = true };
        return new(FeelKind.NoDrive, name) { Other = Before(gear) };
    }

    /// <summary>The gear before this one in shift order, when it is a forward gear too and its ratio is higher.</summary>
    private string? Before(int gear) =>
        gear > 0 && expected[gear - 1].Ratio > expected[gear].Ratio && expected[gear].Ratio > 0 ? gears[gear - 1].Name : null;

    /// <summary>A clutch of the gear that is partly on slips against what the others drive: no clean gear, whatever ratio they have.</summary>
    private Feel FeelsWrongRatio(int gear, double ratio, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        if (ratio < 0 != expected[gear].Ratio < 0) return new(FeelKind.WrongDirection, name);
        if (clutches.Any(clutch => clutch is { Charted: true, Strength: ClutchState.Weak } && inTrain.Contains(clutch.Clutch))) return new(FeelKind.Slips, name);
        var other = Enumerable.Range(0, gears.Length).FirstOrDefault(i => i != gear && Same(expected[i].Ratio, ratio), -1);
        return other < 0
            ? new(FeelKind.WrongRatio, name)
            : new(FeelKind.WrongGear, name) { Other = gears[other].Name };
    }
}
