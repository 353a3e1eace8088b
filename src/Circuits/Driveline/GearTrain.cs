using System.Collections.Immutable;

namespace Circuits.Driveline;

/// <summary>
/// The gear train as equations between shaft speeds. Each planetary gives one: with single pinions
/// <c>Zs ws + Zr wr = (Zs + Zr) wc</c>, with double pinions <c>Zs ws - Zr wr = (Zs - Zr) wc</c> (R. Willis, "Principles
/// of Mechanism", 1841). Whatever holds adds that two speeds are equal; a free one-way clutch, that one is not below
/// the other. All arithmetic is exact.
/// </summary>
/// <remarks>
/// The input turns at 1 and the output is loaded: of the motions that are possible, the output takes the one in which
/// it is slowest. If it can stand still, there is no drive; if it cannot, its least speed is the ratio, and the one-way
/// clutches that keep it from being slower are those that hold.
/// </remarks>
public sealed partial class GearTrain
{
    private readonly int freedom;
    private readonly int input;
    private readonly int output;
    private readonly ImmutableArray<KeyValuePair<string, int>> members;
    private readonly ImmutableArray<ShaftPair> clutches;
    private readonly ImmutableArray<ShaftPair> oneWays;

    // The speed of each shaft, the case last, as a combination of as many free speeds as the gears leave.
    private readonly Fraction[][] speeds;

    /// <summary>What the gear train does while some clutches hold.</summary>
    /// <param name="holdingClutches">The clutches that hold; names that it does not know are no part of it and are ignored.</param>
    public Motion Solve(IReadOnlyCollection<string> holdingClutches) => Settle(holdingClutches).Motion;

    /// <summary>
    /// The torque that each holding clutch and each holding one-way clutch carries, by virtual work, without losses.
    /// </summary>
    /// <param name="holding">The clutches that hold; names that it does not know are ignored.</param>
    /// <returns>
    /// Name and torque as a multiple of input torque, never negative, clutches first in the order of the file; empty
    /// unless the gear train drives. Where more hold than are needed, so that the split is open, the one with the least
    /// sum of squares.
    /// </returns>
    public ImmutableArray<KeyValuePair<string, double>> TorqueShares(IReadOnlyCollection<string> holding) =>
        [.. Reactions(holding).Select(reaction => KeyValuePair.Create(reaction.Name, Math.Abs(reaction.Share)))];

    /// <summary>The same as <see cref="TorqueShares"/>, with direction.</summary>
    /// <param name="holding">The clutches that hold; names that it does not know are ignored.</param>
    /// <returns>A reaction for each; empty unless the gear train drives.</returns>
    public ImmutableArray<Reaction> Reactions(IReadOnlyCollection<string> holding)
    {
        var settled = Settle(holding);
        if (settled.Motion.Kind != MotionKind.Drives) return [];

        // Virtual work: input at 1, output at -ratio, one-way clutches and clutches do none together in any motion
        // that the gears allow, slipping clutches or not.
        var load = new Fraction[freedom];
        Elimination.AddTo(load, speeds[input], Fraction.One);
        Elimination.AddTo(load, speeds[output], -settled.Ratio);
        for (var i = 0; i < oneWays.Length; i++)
        {
            if (!settled.OneWayShares[i].IsZero) Elimination.AddTo(load, Slip(oneWays[i]), settled.OneWayShares[i]);
        }

        var held = Held(holding);
        var shares = LeastShares(Array.ConvertAll(held, Slip), load);
        var reactions = ImmutableArray.CreateBuilder<Reaction>();
        for (var i = 0; i < held.Length; i++) reactions.Add(ReactionOf(held[i], shares[i]));
        for (var i = 0; i < oneWays.Length; i++)
        {
            if (!settled.OneWayShares[i].IsZero) reactions.Add(ReactionOf(oneWays[i], settled.OneWayShares[i]));
        }

        return reactions.ToImmutable();
    }

    private static Reaction ReactionOf(ShaftPair pair, Fraction share) =>
        new(pair.Coupling.Name, pair.Coupling.A.Name, pair.Coupling.B.Name, share.ToDouble());

    /// <summary>Shares such that the sum of shares times slips is minus the load, with the least sum of squares.</summary>
    private static Fraction[] LeastShares(Fraction[][] slips, Fraction[] load)
    {
        var count = slips.Length;
        var rows = new Fraction[load.Length][];
        for (var i = 0; i < rows.Length; i++) rows[i] = [.. slips.Select(slip => slip[i]), -load[i]];
        var rank = Elimination.Reduce(rows, count).Count;

        // shares = R' (R R')^-1 b over the independent rows R, b.
        var normal = new Fraction[rank][];
        for (var i = 0; i < rank; i++)
        {
            normal[i] = new Fraction[rank + 1];
            normal[i][rank] = rows[i][count];
            for (var j = 0; j < rank; j++)
            {
                for (var k = 0; k < count; k++) normal[i][j] += rows[i][k] * rows[j][k];
            }
        }

        Elimination.Reduce(normal, rank);
        var shares = new Fraction[count];
        for (var i = 0; i < rank; i++)
        {
            for (var k = 0; k < count; k++) shares[k] += normal[i][rank] * rows[i][k];
        }

        return shares;
    }

    private ShaftPair[] Held(IReadOnlyCollection<string> holding) =>
        [.. clutches.Where(pair => holding.Contains(pair.Coupling.Name))];

    private Fraction[] Slip(ShaftPair pair) => Elimination.Difference(speeds[pair.A], speeds[pair.B]);

    private Settled Settle(IReadOnlyCollection<string> holding)
    {
        var kernel = Elimination.Kernel(Array.ConvertAll(Held(holding), Slip), freedom);
        var width = freedom == 0 ? 0 : kernel[0].Length;
        var speeds = Array.ConvertAll(this.speeds, row => Elimination.Combine(row, kernel, width));
        if (Array.TrueForAll(speeds[input], value => value.IsZero)) return Settled.TiedUp;
        var slips = new Fraction[oneWays.Length][];
        for (var i = 0; i < slips.Length; i++)
        {
            slips[i] = Elimination.Difference(speeds[oneWays[i].A], speeds[oneWays[i].B]);
        }

        if (SpeedRange.TryCreate(speeds[input], slips, speeds) is not { } range) return Settled.TiedUp;
        var least = range.Extreme(output, 1);
        if (least is { Sign: > 0 } slowest)
        {
            // The state at the slowest is read off before the range moves on to the fastest.
            var settled = Drive(range, slowest);
            return settled.With(engineBraking: range.Extreme(output, -1) == slowest);
        }

        var greatest = range.Extreme(output, -1);
        if (greatest is { Sign: < 0 } backwards) return Drive(range, backwards).With(engineBraking: least == backwards);
        return least is { IsZero: true } && greatest is { IsZero: true }
            ? Settled.TiedUp
            : Settled.Neutral(LinkedFreedom(speeds, width));
    }

    private Settled Drive(SpeedRange range, Fraction output)
    {
        var ratio = Fraction.One / output;
        var shares = Array.ConvertAll(range.Factors(this.output), factor => factor * ratio);
        var names = ImmutableArray.CreateBuilder<string>();
        for (var i = 0; i < shares.Length; i++)
        {
            if (!shares[i].IsZero) names.Add(oneWays[i].Coupling.Name);
        }

        var speeds = ImmutableArray.CreateBuilder<KeyValuePair<string, double>>(members.Length);
        foreach (var (member, shaft) in members)
        {
            if (range.Settled(shaft, this.output) is { } speed) speeds.Add(KeyValuePair.Create(member, speed.ToDouble()));
        }

        var motion = new Motion(MotionKind.Drives, 1, ratio.ToDouble(), names.ToImmutable(), speeds.ToImmutable());
        return new Settled(motion, ratio, shares);
    }

    /// <summary>The free speeds that have to do with the input or the output, directly or through other shafts.</summary>
    private int LinkedFreedom(Fraction[][] speeds, int width)
    {
        var linked = new bool[width];
        var waiting = new Stack<Fraction[]>([speeds[input], speeds[output]]);
        while (waiting.TryPop(out var row))
        {
            for (var j = 0; j < width; j++)
            {
                if (row[j].IsZero || linked[j]) continue;
                linked[j] = true;
                foreach (var other in speeds)
                {
                    if (!other[j].IsZero) waiting.Push(other);
                }
            }
        }

        return linked.Count(isLinked => isLinked);
    }

    private sealed record Settled(Motion Motion, Fraction Ratio, Fraction[] OneWayShares)
    {
        public static Settled TiedUp => new(new Motion(MotionKind.TieUp, 0, null, [], []), default, []);

        public static Settled Neutral(int mobility) =>
            new(new Motion(MotionKind.NoDrive, mobility, null, [], []), default, []);

        public Settled With(bool engineBraking) => this with { Motion = Motion with { EngineBraking = engineBraking } };
    }
}
