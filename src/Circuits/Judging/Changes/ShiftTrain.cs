using System.Collections.Frozen;
using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Model;

namespace Circuits.Judging.Changes;

/// <summary>What the gear train asks of clutches in the gears of a chart.</summary>
internal sealed class ShiftTrain
{
    /// <summary>Speeds per speed of the input are the same below this: they come from exact fractions.</summary>
    private const double Same = 1e-9;

    /// <summary>What is known of speeds in any gear, one that does not drive among them: the vehicle is taken to stand there.</summary>
    private static readonly FrozenDictionary<string, double> Fixed =
        new Dictionary<string, double> { ["input"] = 1, ["output"] = 0, ["case"] = 0 }.ToFrozenDictionary();

    private readonly GearTrain? train;
    private readonly Dictionary<string, Charted> gears = [];

    public ShiftTrain(Unit unit)
    {
        if (unit.GearSet is { } set) GearTrain.TryBuild(set, out train, out _);
        foreach (var gear in unit.Gears) gears[gear.Name] = Read(gear, unit.GearSet);
    }

    /// <summary>Whether there is a gear train to reckon with.</summary>
    public bool IsKnown => train is not null;

    /// <summary>Input speed over output speed with the charted clutches, negative for reverse; null where it does not drive or is not known.</summary>
    public double? Ratio(GearState gear) => gears[gear.Name].Ratio;

    /// <summary>Speed of a member per speed of the input with the charted clutches; null where it is open.</summary>
    public double? Speed(GearState gear, string member) =>
        gears[gear.Name].Speeds.TryGetValue(member, out var speed) ? speed : Fixed.TryGetValue(member, out var known) ? known : null;

    /// <summary>Torque that a clutch must carry in a gear, per unit of torque at the input; 0 where others hold it without this one.</summary>
    public double Need(GearState gear, string clutch) => gears[gear.Name].Needs.GetValueOrDefault(clutch);

    /// <summary>What a gear's clutches can hold, together with the one-way clutches that stand in it; null without a gear train.</summary>
    public TorqueLimits? Limits(GearState gear) => gears[gear.Name].Limits;

    /// <summary>The same on the way between two gears, where the one-way clutches of both can hold.</summary>
    public TorqueLimits? Limits(GearState from, GearState to) =>
        train?.Limits(Ratio(to) < 0, [.. gears[from.Name].Standing, .. gears[to.Name].Standing]);

    /// <summary>Whether a clutch locks the gear train when it holds beside those of a gear's chart.</summary>
    public bool TiesUp(GearState gear, string clutch) => gears[gear.Name].Locking.Contains(clutch);

    private Charted Read(GearState gear, GearSet? set)
    {
        string[] charted = [.. gear.Apply.Select(use => use.Name)];
        if (train is null) return new Charted(gear.Ratio ?? (charted.Length == 0 ? null : 1));
        var motion = train.Solve(charted);
        if (motion.Ratio is not { } ratio) return new Charted(null);
        var speeds = motion.Speeds.ToDictionary();
        speeds["case"] = 0;
        ImmutableArray<string> standing =
        [
            .. set!.OneWay.Where(pair => speeds.TryGetValue(pair.A.Name, out var a) && speeds.TryGetValue(pair.B.Name, out var b) && Math.Abs(a - b) < Same)
                .Select(pair => pair.Name),
        ];
        var limits = train.Limits(ratio < 0, standing);
        return new Charted(ratio)
        {
            Limits = limits,
            Speeds = speeds,
            Standing = standing,
            Needs = charted.Distinct().ToDictionary(name => name, name => limits.Need(name, charted)),
            Locking =
            [
                .. set.Clutches.Select(coupling => coupling.Name)
                    .Where(name => !charted.Contains(name) && train.Solve([.. charted, name]).Kind == MotionKind.TieUp),
            ],
        };
    }

    private sealed record Charted(double? Ratio)
    {
        public TorqueLimits? Limits { get; init; }

        public Dictionary<string, double> Speeds { get; init; } = [];

        public ImmutableArray<string> Standing { get; init; } = [];

        public Dictionary<string, double> Needs { get; init; } = [];

        public HashSet<string> Locking { get; init; } = [];
    }
}
