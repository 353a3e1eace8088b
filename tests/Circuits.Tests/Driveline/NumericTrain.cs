using Circuits.Driveline;
using Circuits.Model;
using MathNet.Numerics.LinearAlgebra;

namespace Circuits.Tests.Driveline;

/// <summary>
/// The same questions answered by other means: every member an unknown of its own, joints as equations, the null space
/// by singular values in floating point, and one-way clutches by projecting their half-spaces onto input and output
/// (Fourier-Motzkin elimination).
/// </summary>
internal sealed class NumericTrain
{
    private const double Nothing = 1e-9;
    private readonly GearSet _set;
    private readonly Dictionary<string, int> _unknowns = [];

    public NumericTrain(GearSet set)
    {
        _set = set;
        var names = set.Planetaries.SelectMany(p => new[] { $"{p.Name}.sun", $"{p.Name}.carrier", $"{p.Name}.ring" })
            .Concat(set.Joined.Concat(set.Clutches).Concat(set.OneWay).SelectMany(tie => new[] { tie.A.Name, tie.B.Name }))
            .Concat(["case", "input", "output"]);
        foreach (var name in names) _unknowns.TryAdd(name, _unknowns.Count);
    }

    /// <summary>Kind, degrees of freedom, output over input speed and whether the output may run ahead.</summary>
    public (MotionKind Kind, int Mobility, double Speed, bool Overruns) Solve(IReadOnlyCollection<string> holding)
    {
        var motions = Motions(holding);
        var input = motions.Row(_unknowns["input"]);
        var output = motions.Row(_unknowns["output"]);
        if (input.L2Norm() < Nothing) return (MotionKind.TieUp, 0, 0, false);

        // Directions in which only the input moves, only the output moves, neither moves.
        var along = output * input / (input * input);
        var across = output - along * input;
        var linked = across.L2Norm() < Nothing;
        var onlyOutput = linked ? across * 0 : across / (across * across);
        var onlyInput = input / (input * input) - onlyOutput * (linked ? 0 : along);
        var rest = Neither(input, linked ? null : across);
        var limits = _set.OneWay.Select(tie => motions.Row(_unknowns[tie.A.Name]) - motions.Row(_unknowns[tie.B.Name]))
            .Select(slip => new[] { slip * onlyInput, slip * onlyOutput }.Concat(rest.Select(direction => slip * direction)).ToArray())
            .ToList();
        limits = Scaled(limits);
        for (var i = 0; i < rest.Count; i++) limits = Eliminate(limits);

        var (least, greatest) = linked ? (along, along) : (double.NegativeInfinity, double.PositiveInfinity);
        foreach (var limit in limits)
        {
            if (Math.Abs(limit[1]) < Nothing)
            {
                if (limit[0] < -Nothing) return (MotionKind.TieUp, 0, 0, false);
            }
            else if (limit[1] > 0) least = Math.Max(least, -limit[0] / limit[1]);
            else greatest = Math.Min(greatest, -limit[0] / limit[1]);
        }

        if (least > greatest + Nothing) return (MotionKind.TieUp, 0, 0, false);
        var overruns = greatest > least + Nothing;
        if (least > Nothing) return (MotionKind.Drives, 1, least, overruns);
        if (greatest < -Nothing) return (MotionKind.Drives, 1, greatest, overruns);
        return overruns ? (MotionKind.NoDrive, Linked(motions), 0, true) : (MotionKind.TieUp, 0, 0, false);
    }

    /// <summary>A basis of the motions, one a column; each row is a member.</summary>
    public Matrix<double> Motions(IReadOnlyCollection<string> holding)
    {
        var rows = new List<double[]>();
        double[] Row(params (string Name, double Factor)[] terms)
        {
            var row = new double[_unknowns.Count];
            foreach (var (name, factor) in terms) row[_unknowns[name]] += factor;
            rows.Add(row);
            return row;
        }

        Row(("case", 1));
        foreach (var set in _set.Planetaries)
        {
            // Relative to the carrier, sun and ring turn opposite ways with single pinions, the same way with double.
            var ring = (double)set.Ring / set.Sun * (set.DoublePinions ? -1 : 1);
            Row(($"{set.Name}.sun", 1), ($"{set.Name}.ring", ring), ($"{set.Name}.carrier", -1 - ring));
        }

        if (_set.Input is { } input) Row(("input", 1), (input.Name, -1));
        Row(("output", 1), (_set.Output.Name, -1));
        foreach (var tie in _set.Joined.Concat(_set.Clutches.Where(clutch => holding.Contains(clutch.Name))))
        {
            Row((tie.A.Name, 1), (tie.B.Name, -1));
        }

        // Zero rows make it at least square, so that the whole right-hand basis is given.
        while (rows.Count < _unknowns.Count) Row();
        var svd = Matrix<double>.Build.DenseOfRowArrays(rows).Svd();
        var rank = svd.S.Count(value => value > Nothing);
        return rank == _unknowns.Count
            ? Matrix<double>.Build.Dense(_unknowns.Count, 1)
            : svd.VT.SubMatrix(rank, _unknowns.Count - rank, 0, _unknowns.Count).Transpose();
    }

    public Vector<double> Speed(Matrix<double> motions, string member) => motions.Row(_unknowns[member]);

    private static List<Vector<double>> Neither(Vector<double> input, Vector<double>? across)
    {
        var found = new List<Vector<double>> { input.Normalize(2) };
        if (across is not null) found.Add(across.Normalize(2));
        var given = found.Count;
        for (var i = 0; i < input.Count; i++)
        {
            var unit = Vector<double>.Build.Dense(input.Count, j => i == j ? 1 : 0);
            foreach (var _ in (int[])[1, 2])
            {
                foreach (var direction in found) unit -= unit * direction * direction;
            }

            if (unit.L2Norm() > 1e-6) found.Add(unit.Normalize(2));
        }

        return found[given..];
    }

    private static List<double[]> Eliminate(List<double[]> limits)
    {
        var kept = limits.Where(limit => Math.Abs(limit[^1]) < Nothing).Select(limit => limit[..^1]).ToList();
        foreach (var low in limits.Where(limit => limit[^1] >= Nothing))
        {
            foreach (var high in limits.Where(limit => limit[^1] <= -Nothing))
            {
                kept.Add([.. low.Zip(high, (l, h) => (l * -high[^1]) + (h * low[^1])).SkipLast(1)]);
            }
        }

        return Scaled(kept);
    }

    // Dividing by a small factor instead would make large numbers of what rounding leaves where there is nothing.
    private static List<double[]> Scaled(List<double[]> limits) =>
        [.. from limit in limits let size = limit.Max(Math.Abs) where size > Nothing select limit.Select(factor => factor / size).ToArray()];

    /// <summary>
    /// Degrees of freedom of what is linked with input or output. The projector onto the motions falls apart into
    /// blocks exactly where the motions do, and a block's trace is its dimension.
    /// </summary>
    private int Linked(Matrix<double> motions)
    {
        var projector = motions * motions.Transpose();
        var seen = new HashSet<int>();
        var waiting = new Stack<int>([_unknowns["input"], _unknowns["output"]]);
        while (waiting.TryPop(out var i))
        {
            if (!seen.Add(i)) continue;
            for (var j = 0; j < _unknowns.Count; j++)
            {
                if (Math.Abs(projector[i, j]) > Nothing) waiting.Push(j);
            }
        }

        return (int)Math.Round(seen.Sum(i => projector[i, i]));
    }
}
