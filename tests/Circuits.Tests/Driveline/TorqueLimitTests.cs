using Circuits.Driveline;
using Circuits.Model;
using Circuits.Reading;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using Xunit;

namespace Circuits.Tests.Driveline;

public class TorqueLimitTests
{
    private const double Sun = 30, Ring = 70;

    private static readonly GearTrain Swap = Gears.Train("only 30/70", "only.carrier", "only.sun", clutches: "low: only.ring case, high: input only.ring");

    /// <summary>The lever: a held ring carries ring over sun of the input's torque; a clutch from input to ring, ring over sun plus ring.</summary>
    [Theory]
    [InlineData("low", Ring / Sun)]
    [InlineData("high", Ring / (Sun + Ring))]
    public void A_clutch_alone_must_carry_what_the_lever_says(string clutch, double need)
    {
        var limits = Swap.Limits(reverse: false, []);
        Assert.Equal(need, limits.Need(clutch, [clutch]), 1e-15);
        Assert.Equal(100, limits.Held(Capacities(limits, (clutch, 100 * need))), 1e-12);
    }

    /// <summary>While one clutch hands over to another, fractions of what each needs add up.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.7, 0.3)]
    [InlineData(0.25, 0.75)]
    public void Fractions_of_two_clutches_add_up(double low, double high)
    {
        var limits = Swap.Limits(reverse: false, []);
        Assert.Equal(1, limits.Held(Capacities(limits, ("low", low * Ring / Sun), ("high", high * Ring / (Sun + Ring)))), 1e-12);
    }

    [Fact]
    public void A_one_way_clutch_that_stands_holds_and_one_that_overruns_does_not()
    {
        var train = Gears.Train("only 30/70", "only.carrier", "only.sun", clutches: "low: only.ring case, high: input only.ring", oneWay: "sprag: only.ring case");
        Assert.Equal(double.PositiveInfinity, train.Limits(reverse: false, ["sprag"]).Held([0, 0]));
        Assert.Equal(0, train.Limits(reverse: false, ["sprag"]).Need("low", ["low"]));
        Assert.Equal(0, train.Limits(reverse: false, []).Held([0, 0]));
        Assert.Equal(Ring / Sun, train.Limits(reverse: false, []).Need("low", ["low"]), 1e-15);
    }

    /// <summary>Where no two clutches share a torque, virtual work in the gear itself says the same.</summary>
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Needs_are_the_shares_that_virtual_work_gives_in_the_gear(string name)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var train = Gears.Build(unit.GearSet!);
        var compared = 0;
        foreach (var gear in unit.Gears)
        {
            string[] charted = [.. gear.Apply.Select(use => use.Name)];
            var motion = train.Solve(charted);
            if (motion.Kind != MotionKind.Drives || charted.Any(less => train.Solve([.. charted.Where(name => name != less)]).Ratio == motion.Ratio && train.Limits(false, []).Clutches.Contains(less))) continue;
            var limits = train.Limits(motion.Ratio < 0, motion.HoldingOneWays);
            foreach (var (clutch, share) in train.TorqueShares(charted).Where(share => charted.Contains(share.Key)))
            {
                compared++;
                Assert.Equal(share, limits.Need(clutch, charted), 1e-9);
            }
        }

        Assert.True(compared >= 4, $"{compared}");
    }

    /// <summary>
    /// The same by the lower-bound theorem: the most torque at the input for which torques within all capacities keep the balance. A linear
    /// programme over the motions of <see cref="NumericTrain"/>, solved by trying every basis.
    /// </summary>
    [Fact]
    public void No_torques_within_capacity_hold_more_and_some_hold_as_much()
    {
        var finite = 0;
        Gen.Select(RandomTrains.Any, Gen.Double[0.5, 20].Array[5], Gen.Bool).Sample(
            (random, capacity, reverse) =>
            {
                if (random.Set.Clutches.Length > 4 || !GearTrain.TryBuild(random.Set, out var train, out _)) return;
                string[] standing = [.. random.Set.OneWay.Select(tie => tie.Name)];
                var limits = train.Limits(reverse, standing);
                var capacities = capacity[..limits.Clutches.Length];
                var held = Math.Min(limits.Held(capacities), Most);
                Assert.Equal(Best(random.Set, capacities, reverse), held, 1e-6 * (1 + held));
                if (held is > 0 and < Most) Interlocked.Increment(ref finite);
            },
            iter: 600);
        Assert.True(finite > 50, $"{finite}");
    }

    private const double Most = 1e4;

    private static double Best(GearSet set, double[] capacities, bool reverse)
    {
        var numeric = new NumericTrain(set);
        var motions = numeric.Motions([]);
        Vector<double> Slip(Coupling tie) => numeric.Speed(motions, tie.A.Name) - numeric.Speed(motions, tie.B.Name);

        // Columns: torque at the input, load at the output, one-way clutches, clutches; each with its bounds.
        var columns = new List<(Vector<double> Column, double Low, double High)>
        {
            (numeric.Speed(motions, "input"), 0, Most),
            (numeric.Speed(motions, "output") * (reverse ? 1 : -1), 0, double.PositiveInfinity),
        };
        columns.AddRange(set.OneWay.Select(tie => (Slip(tie), 0.0, double.PositiveInfinity)));
        columns.AddRange(set.Clutches.Select((tie, i) => (Slip(tie), -capacities[i], capacities[i])));
        var rows = motions.ColumnCount;
        var rank = Rank(Matrix<double>.Build.DenseOfColumnVectors(columns.Select(column => column.Column)));
        var best = 0.0;
        foreach (var basis in Subsets(columns.Count, rank))
        {
            var matrix = Matrix<double>.Build.Dense(rows, rank, (i, j) => columns[basis[j]].Column[i]);
            if (Rank(matrix) < rank) continue;
            var solver = matrix.QR(QRMethod.Thin);
            var others = Enumerable.Range(0, columns.Count).Except(basis).ToArray();
            for (var corner = 0; corner < 1 << others.Length; corner++)
            {
                var values = others.Select((k, i) => (corner >> i & 1) == 0 ? columns[k].Low : columns[k].High).ToArray();
                if (values.Any(double.IsInfinity)) continue;
                var right = Vector<double>.Build.Dense(rows);
                for (var i = 0; i < others.Length; i++) right -= columns[others[i]].Column * values[i];
                var solved = solver.Solve(right);
                if ((matrix * solved - right).L2Norm() > 1e-6 * (1 + right.L2Norm())) continue;
                if (Enumerable.Range(0, rank).Any(j => solved[j] < columns[basis[j]].Low - 1e-7 || solved[j] > columns[basis[j]].High + 1e-7)) continue;
                var input = Array.IndexOf(basis, 0);
                best = Math.Max(best, input >= 0 ? solved[input] : values[Array.IndexOf(others, 0)]);
            }
        }

        return best;
    }

    // What is only rounding must not count as another direction.
    private static int Rank(Matrix<double> matrix) => matrix.Svd(computeVectors: false).S.Count(value => value > 1e-8);

    private static IEnumerable<int[]> Subsets(int count, int taken, int from = 0)
    {
        if (taken == 0) return [[]];
        return Enumerable.Range(from, Math.Max(0, count - from - taken + 1)).SelectMany(first => Subsets(count, taken - 1, first + 1).Select(rest => (int[])[first, .. rest]));
    }

    private static double[] Capacities(TorqueLimits limits, params (string Clutch, double Torque)[] given) =>
        [.. limits.Clutches.Select(clutch => given.FirstOrDefault(pair => pair.Clutch == clutch).Torque)];
}
