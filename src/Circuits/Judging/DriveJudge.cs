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
    private readonly Dictionary<string, Motion> known = [];

    public DriveJudge(Unit unit, GearTrain train)
    {
        this.train = train;
        gears = unit.Gears;
        expected = [.. gears.Select(gear => MotionOf([.. gear.Apply.Select(use => use.Name)]))];
    }

    /// <summary>What the gear train does with the clutches that hold.</summary>
    /// <param name="gear">The gear's number.</param>
    /// <param name="clutches">Its clutches, judged.</param>
    /// <param name="settled">Whether the gear settles at all.</param>
    public DriveReport Judge(int gear, ImmutableArray<ClutchReport> clutches, bool settled)
    {
        var motion = MotionOf(NamesOf(clutches, static clutch => clutch.Strength == ClutchState.Applied));
        var felt = settled ? Feels(gear, motion, clutches) : new Felt(FeelKind.NeverSettles, "comes and goes: the hydraulics never settle");
        return new DriveReport(motion.Mobility, motion.Ratio, felt.Text, expected[gear].Ratio) { Kind = felt.Kind, Instead = felt.Instead };
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

    private Felt Feels(int gear, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        if (motion.Kind == MotionKind.TieUp) return new(FeelKind.TieUp, $"tie-up in {name}");
        if (!ShouldDrive(gear)) return FeelsInNeutral(name, motion, clutches);
        if (motion.Kind == MotionKind.NoDrive) return FeelsWithoutDrive(gear, clutches);
        if (!Same(motion.Ratio, expected[gear].Ratio)) return FeelsWrongRatio(gear, motion.Ratio!.Value);
        if (clutches.Any(clutch => clutch.Charted && clutch.Verdict == Verdict.Weak)) return new(FeelKind.Slips, $"slips in {name}");
        if (expected[gear].EngineBraking && !motion.EngineBraking) return new(FeelKind.NoEngineBraking, $"no engine braking in {name}");
        var dragging = clutches.FirstOrDefault(clutch => clutch.Verdict == Verdict.Unwanted);
        if (dragging is not null)
        {
            return dragging.Strength == ClutchState.Applied
                ? new(FeelKind.OneTooMany, $"drives in {name}, {dragging.Clutch} on as well")
                : new(FeelKind.Drags, $"drag in {name}: {dragging.Clutch} partly on");
        }

        return new(FeelKind.AsItShould, "as it should");
    }

    private static Felt FeelsInNeutral(string name, Motion motion, ImmutableArray<ClutchReport> clutches)
    {
        if (motion.Kind == MotionKind.Drives)
        {
            return motion.Ratio > 0
                ? new(FeelKind.CreepsForward, $"creeps forward in {name}")
                : new(FeelKind.CreepsBackward, $"creeps backward in {name}");
        }

        return clutches.Any(clutch => clutch.Verdict == Verdict.Unwanted) ? new(FeelKind.Drags, $"drags in {name}") : new(FeelKind.AsItShould, "as it should");
    }

    /// <summary>A weak clutch still drags the vehicle along, so weak is slip where a firm one would drive.</summary>
    private Felt FeelsWithoutDrive(int gear, ImmutableArray<ClutchReport> clutches)
    {
        var name = gears[gear].Name;
        var withWeak = MotionOf(NamesOf(clutches, static clutch => clutch.Charted && clutch.Strength != ClutchState.Released));
        if (withWeak.Kind == MotionKind.Drives) return new(FeelKind.Slips, $"slips in {name}");
        if (expected[gear].Ratio < 0) return new(FeelKind.NoDrive, "no reverse");
        return new(FeelKind.NoDrive, Before(gear) is { } before ? $"no drive in {name}, flare on {before}-{name}" : $"no drive in {name}");
    }

    /// <summary>The gear before this one in shift order, when it is a forward gear too and its ratio is higher.</summary>
    private string? Before(int gear) =>
        gear > 0 && expected[gear - 1].Ratio > expected[gear].Ratio && expected[gear].Ratio > 0 ? gears[gear - 1].Name : null;

    private Felt FeelsWrongRatio(int gear, double ratio)
    {
        var name = gears[gear].Name;
        if (ratio < 0 != expected[gear].Ratio < 0) return new(FeelKind.WrongDirection, $"wrong direction in {name}");
        var other = Enumerable.Range(0, gears.Length).FirstOrDefault(i => i != gear && Same(expected[i].Ratio, ratio), -1);
        return other < 0
            ? new(FeelKind.WrongRatio, $"wrong ratio in {name}")
            : new(FeelKind.WrongGear, $"wrong gear: {gears[other].Name} instead of {name}", gears[other].Name);
    }

    private readonly record struct Felt(FeelKind Kind, string Text, string? Instead = null);
}
