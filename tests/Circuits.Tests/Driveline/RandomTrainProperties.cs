using System.Collections.Concurrent;
using Circuits.Driveline;
using Circuits.Model;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Driveline;

public class RandomTrainProperties
{
    private const int Times = 1000;

    [Fact]
    public void Motion_agrees_with_singular_values_and_projection()
    {
        var met = new ConcurrentDictionary<string, int>();
        RandomTrains.Any.Sample(
            random =>
            {
                if (!GearTrain.TryBuild(random.Set, out var train, out var faults))
                {
                    var rules = faults.Select(fault => fault.Rule).ToHashSet();
                    if (rules.Contains(GearsetCannotDrive.Rule.Name)) return;
                    Assert.Contains(GearsetCannotTurn.Rule.Name, rules);
                    Assert.Equal(MotionKind.TieUp, new NumericTrain(random.Set).Solve([]).Kind);
                    Meet("cannot turn");
                    return;
                }

                var motion = train.Solve(random.Holding);
                var expected = new NumericTrain(random.Set).Solve(random.Holding);
                Assert.Equal((expected.Kind, expected.Mobility), (motion.Kind, motion.Mobility));
                Assert.Equal(expected.Kind == MotionKind.Drives, motion.Ratio is not null);
                Assert.Equal(expected.Kind == MotionKind.Drives && !expected.Overruns, motion.EngineBraking);
                if (motion.Ratio is { } ratio) Assert.Equal(expected.Speed, 1 / ratio, 1e-7 * (1 + Math.Abs(expected.Speed)));
                Meet(motion.Kind.ToString());
                if (motion.Mobility > 2) Meet("mobility over 2");
                if (motion.Ratio < 0) Meet("reverse");
                if (!motion.HoldingOneWays.IsEmpty) Meet("held by a one-way clutch");
            },
            iter: 4 * Times);
        string[] kinds = ["cannot turn", "Drives", "NoDrive", "TieUp", "mobility over 2", "reverse", "held by a one-way clutch"];
        Assert.All(kinds, kind => Assert.True(met.GetValueOrDefault(kind) >= 10, $"{kind}: {met.GetValueOrDefault(kind)}"));

        void Meet(string kind) => met.AddOrUpdate(kind, 1, (_, count) => count + 1);
    }

    [Fact]
    public void Speeds_satisfy_gears_clutches_and_one_way_clutches() => Drives((random, train, motion) =>
    {
        var speeds = motion.Speeds.Append(new("case", 0)).ToDictionary();
        Assert.Equal(1, speeds["input"]);
        Assert.Equal(1 / motion.Ratio!.Value, speeds["output"], 1e-12 * (1 + Math.Abs(speeds["output"])));
        double? Of(string name) => speeds.TryGetValue(name, out var speed) ? speed : null;
        foreach (var set in random.Set.Planetaries)
        {
            var ring = (double)set.Ring / set.Sun * (set.DoublePinions ? -1 : 1);
            if (Of($"{set.Name}.sun") is not { } ws || Of($"{set.Name}.ring") is not { } wr || Of($"{set.Name}.carrier") is not { } wc) continue;
            Assert.Equal(0, ws - wc + ring * (wr - wc), 1e-9 * (1 + Math.Abs(ws) + Math.Abs(ring * wr) + Math.Abs(ring * wc)));
        }

        foreach (var tie in random.Set.Joined.Concat(random.Set.Clutches.Where(clutch => random.Holding.Contains(clutch.Name)))
                     .Concat(random.Set.OneWay.Where(tie => motion.HoldingOneWays.Contains(tie.Name))))
        {
            Assert.Equal(Of(tie.A.Name), Of(tie.B.Name));
        }

        foreach (var tie in random.Set.OneWay)
        {
            if (Of(tie.A.Name) is { } a && Of(tie.B.Name) is { } b) Assert.True(a - b >= -1e-12 * (Math.Abs(a) + Math.Abs(b)));
        }
    });

    [Fact]
    public void Torques_do_no_work_in_any_motion_of_the_gears() => Drives((random, train, motion) =>
    {
        // Clutches slipping or not: input 1, output -ratio, and the reactions balance on every free motion.
        var reactions = train.Reactions(random.Holding);
        var numeric = new NumericTrain(random.Set);
        var motions = numeric.Motions([]);
        var work = numeric.Speed(motions, "input") - motion.Ratio!.Value * numeric.Speed(motions, "output");
        var scale = 1 + Math.Abs(motion.Ratio.Value);
        foreach (var reaction in reactions)
        {
            work += reaction.Share * (numeric.Speed(motions, reaction.First) - numeric.Speed(motions, reaction.Second));
            scale += Math.Abs(reaction.Share);
        }

        Assert.True(work.InfinityNorm() < 1e-8 * scale, $"{work} of {scale}");
        Assert.Equal(
            random.Set.Clutches.Select(clutch => clutch.Name).Where(random.Holding.Contains).Concat(motion.HoldingOneWays),
            reactions.Select(reaction => reaction.Name));
        Assert.All(
            reactions.Where(reaction => motion.HoldingOneWays.Contains(reaction.Name)),
            reaction => Assert.True(reaction.Share > 0, $"{reaction} pulls the way that it is free"));
    });

    [Fact]
    public void Torques_on_the_case_balance_input_and_output() => Drives((random, train, motion) =>
    {
        // No member is joined to the case here, so that whatever the case takes comes through clutches.
        var onTrain = train.Reactions(random.Holding)
            .Select(r => (r.First == "case" ? -r.Share : 0) + (r.Second == "case" ? r.Share : 0)).ToArray();
        var scale = 1 + Math.Abs(motion.Ratio!.Value) + onTrain.Sum(Math.Abs);
        Assert.Equal(0, 1 - motion.Ratio.Value + onTrain.Sum(), 1e-10 * scale);
    });

    [Fact]
    public void Other_names_and_another_order_change_nothing() => Built((random, train) =>
    {
        static string Rename(string name) => name.StartsWith('p') ? $"z{9 - (name[1] - '0')}{name[2..]}" : name;
        static Member Other(Member member) => member with { Name = Rename(member.Name) };
        static Coupling Swap(Coupling tie) => tie with { A = Other(tie.B), B = Other(tie.A) };
        var set = random.Set;
        var other = Gears.Build(new GearSet(
            [.. set.Planetaries.Reverse().Select(p => p with { Name = Rename(p.Name) })],
            [.. set.Joined.Reverse().Select(Swap)], set.Input is { } input ? Other(input) : null, Other(set.Output),
            [.. set.Clutches.Reverse().Select(Swap)],
            [.. set.OneWay.Reverse().Select(tie => tie with { A = Other(tie.A), B = Other(tie.B) })], set.Place));
        Same(train.Solve(random.Holding), other.Solve([.. random.Holding.Reverse()]));
    });

    [Fact]
    public void Twice_the_teeth_change_nothing() => Built((random, train) =>
    {
        var doubled = random.Set.Planetaries.Select(p => p with { Sun = 2 * p.Sun, Ring = 2 * p.Ring });
        Same(train.Solve(random.Holding), Gears.Build(random.Set with { Planetaries = [.. doubled] }).Solve(random.Holding));
    });

    [Fact]
    public void A_planetary_that_idles_on_the_output_does_not_spoil_the_ratio() => Drives((random, train, motion) =>
    {
        var set = random.Set;
        var idle = Gears.Build(set with
        {
            Planetaries = set.Planetaries.Add(new Planetary("idle", 31, 79, false, set.Place)),
            Joined = set.Joined.Add(new Coupling("", new Member("idle.carrier", set.Place), set.Output, set.Place)),
        });
        var withIdle = idle.Solve(random.Holding);
        Same(motion, withIdle);
        Assert.DoesNotContain(withIdle.Speeds, speed => speed.Key is "idle.sun" or "idle.ring");
        Assert.Equal(train.TorqueShares(random.Holding), idle.TorqueShares(random.Holding));
    });

    [Fact]
    public void One_more_clutch_never_undoes_a_tie_up() => Built((random, train) =>
    {
        if (train.Solve(random.Holding).Kind != MotionKind.TieUp) return;
        foreach (var clutch in random.Set.Clutches)
        {
            Assert.Equal(MotionKind.TieUp, train.Solve([.. random.Holding, clutch.Name]).Kind);
        }
    });

    private static void Same(Motion expected, Motion actual)
    {
        Assert.Equal((expected.Kind, expected.Mobility, expected.EngineBraking), (actual.Kind, actual.Mobility, actual.EngineBraking));
        Assert.Equal(expected.Ratio, actual.Ratio);
    }

    private static void Built(Action<RandomTrain, GearTrain> check) => RandomTrains.Any.Sample(
        random =>
        {
            if (GearTrain.TryBuild(random.Set, out var train, out _)) check(random, train);
        },
        iter: Times);

    private static void Drives(Action<RandomTrain, GearTrain, Motion> check) => Built((random, train) =>
    {
        var motion = train.Solve(random.Holding);
        if (motion.Kind == MotionKind.Drives) check(random, train, motion);
        else Assert.Empty(train.TorqueShares(random.Holding));
    });
}
