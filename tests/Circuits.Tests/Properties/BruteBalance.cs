using MathNet.Numerics.LinearAlgebra;

namespace Circuits.Tests.Properties;

/// <summary>Balances the free cells between fixed ones with a library's dense equation solver.</summary>
internal sealed class BruteBalance
{
    private static readonly double[] Roundings = [1000, 30, 1, 1e-2, 1e-4, 1e-6];

    private readonly List<BruteLink> links;
    private readonly List<int> active = [];
    private readonly List<(int Cell, int On)> hanging = [];
    private readonly List<(List<int> Region, int On)> level = [];
    private readonly int[] row;
    private readonly double total;
    private bool started;

    /// <param name="cells">Number of cells.</param>
    /// <param name="open">The links that oil passes.</param>
    /// <param name="isFixed">Whether a cell's pressure is fixed.</param>
    /// <param name="isTapped">Whether a regulator may take oil from a cell, or let it in.</param>
    public BruteBalance(int cells, List<BruteLink> open, bool[] isFixed, Func<int, bool> isTapped)
    {
        links = [.. open];
        CutDeadEnds(cell => !isFixed[cell] && !isTapped(cell), cells);
        total = links.Sum(link => link.Area);
        row = new int[cells];
        Array.Fill(row, -1);
        var seen = new HashSet<int>(Enumerable.Range(0, cells).Where(cell => isFixed[cell]));
        for (var start = 1; start < cells; start++)
        {
            if (!seen.Add(start)) continue;
            var (region, ends) = Region(start, seen, isFixed);
            if (ends.Count == 1 && !region.Exists(cell => isTapped(cell))) level.Add((region, ends.Single()));
            if (ends.Count == 0 || level.Exists(pair => pair.Region == region)) continue;
            foreach (var cell in region)
            {
                row[cell] = active.Count;
                active.Add(cell);
            }
        }
    }

    /// <summary>The free cells that links join to one, and the fixed ones around them.</summary>
    private (List<int> Region, HashSet<int> Ends) Region(int start, HashSet<int> seen, bool[] isFixed)
    {
        var (region, ends) = (new List<int> { start }, new HashSet<int>());
        for (var at = 0; at < region.Count; at++)
        {
            foreach (var link in links.Where(link => link.A == region[at] || link.B == region[at]))
            {
                var other = link.A == region[at] ? link.B : link.A;
                if (isFixed[other]) ends.Add(other);
                else if (seen.Add(other)) region.Add(other);
            }
        }

        return (region, ends);
    }

    /// <summary>A cell that one link alone joins to the rest is level with what is beyond it.</summary>
    private void CutDeadEnds(Func<int, bool> isLoose, int cells)
    {
        for (var cut = true; cut;)
        {
            cut = false;
            for (var cell = 1; cell < cells; cell++)
            {
                var own = links.Where(link => link.A == cell || link.B == cell).ToList();
                if (own.Count != 1 || !isLoose(cell)) continue;
                hanging.Add((cell, own[0].A == cell ? own[0].B : own[0].A));
                links.Remove(own[0]);
                cut = true;
            }
        }
    }

    /// <summary>Moves the free cells to where their flows balance.</summary>
    /// <returns>How far they moved.</returns>
    public double Solve(double[] pressure, Func<int, double> drawn)
    {
        var all = active.Concat(level.SelectMany(pair => pair.Region)).Concat(hanging.Select(pair => pair.Cell)).ToList();
        if (all.Count == 0) return 0;
        var before = all.Select(cell => pressure[cell]).ToArray();
        if (!started)
        {
            foreach (var cell in active) pressure[cell] = pressure.Max() / 2;
        }

        foreach (var rounding in started ? Roundings[^2..] : Roundings) Newton(pressure, drawn, rounding);
        started = true;
        foreach (var (cell, on) in level.SelectMany(pair => pair.Region.Select(cell => (cell, pair.On)))) pressure[cell] = pressure[on];
        foreach (var (cell, on) in hanging.AsEnumerable().Reverse()) pressure[cell] = pressure[on];
        return all.Select((cell, index) => Math.Abs(pressure[cell] - before[index])).Max();
    }

    private void Newton(double[] pressure, Func<int, double> drawn, double rounding)
    {
        if (active.Count == 0) return;
        for (var iteration = 0; iteration < 40; iteration++)
        {
            var (residual, slopes) = Assemble(pressure, drawn, rounding);
            var norm = residual.L2Norm();
            if (!(norm >= 1e-10 * total)) return;
            var step = slopes.Solve(residual);
            if (!step.ForAll(double.IsFinite)) return;
            var old = active.Select(cell => pressure[cell]).ToArray();
            var better = false;
            for (var scale = 1.0; scale > 1e-4 && !better; scale /= 2)
            {
                for (var i = 0; i < active.Count; i++) pressure[active[i]] = old[i] + (scale * step[i]);
                better = Assemble(pressure, drawn, rounding).Residual.L2Norm() < norm;
            }

            if (better) continue;
            for (var i = 0; i < active.Count; i++) pressure[active[i]] = old[i];
            return;
        }
    }

    /// <summary>Net inflow of each free cell, and its slope with the sign turned.</summary>
    private (Vector<double> Residual, Matrix<double> Slopes) Assemble(double[] pressure, Func<int, double> drawn, double rounding)
    {
        var residual = Vector<double>.Build.Dense(active.Count, i => -drawn(active[i]));
        var slopes = Matrix<double>.Build.Dense(active.Count, active.Count);
        foreach (var link in links)
        {
            var (a, b) = (row[link.A], row[link.B]);
            if (a < 0 && b < 0) continue;
            var difference = pressure[link.A] - pressure[link.B];
            var square = (difference * difference) + (rounding * rounding);
            var flow = link.Area * difference / Math.Pow(square, 0.25);
            var slope = link.Area * (Math.Pow(square, -0.25) - (0.5 * difference * difference * Math.Pow(square, -1.25)));
            if (a >= 0) (residual[a], slopes[a, a]) = (residual[a] - flow, slopes[a, a] + slope);
            if (b >= 0) (residual[b], slopes[b, b]) = (residual[b] + flow, slopes[b, b] + slope);
            if (a < 0 || b < 0) continue;
            slopes[a, b] -= slope;
            slopes[b, a] -= slope;
        }

        return (residual, slopes);
    }
}
