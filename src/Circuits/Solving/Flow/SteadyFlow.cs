namespace Circuits.Solving.Flow;

/// <summary>How a search for a steady state ended.</summary>
/// <param name="Converged">Whether every cell's balance is met.</param>
/// <param name="Residual">The largest imbalance, as a fraction of what flows into the network.</param>
/// <param name="WorstCell">The cell that has it.</param>
/// <param name="Steps">How many linear systems were solved.</param>
internal readonly record struct SteadyOutcome(bool Converged, double Residual, int WorstCell, int Steps);

/// <summary>
/// Finds pressures at which what flows into every cell flows out again: Newton's method with steps halved until the
/// imbalance falls; where that stalls, cells are given a capacity and the network is let settle, in steps that grow as it does.
/// </summary>
internal sealed class SteadyFlow
{
    /// <summary>An imbalance below this fraction of what flows into the network is none.</summary>
    public const double Tolerance = 1e-9;

    private const int NewtonSteps = 80;
    private const int SettlingSteps = 600;
    private const double LeastShare = 1.0 / 1024;

    /// <summary>A step of pressure that is never exceeded, Pa.</summary>
    private const double LongestStep = 1e6;

    private readonly FlowNetwork flow;
    private readonly FlowBalance balance;
    private readonly double[] step;
    private readonly double[] before;

    public SteadyFlow(FlowNetwork flow, FlowBalance balance)
    {
        this.flow = flow;
        this.balance = balance;
        step = new double[flow.Cells - 1];
        before = new double[flow.Cells];
    }

    /// <summary>Solves from the pressures in the balance as they stand; they are replaced.</summary>
    public SteadyOutcome Solve()
    {
        balance.Evaluate(withSlopes: true);
        var (converged, steps) = Newton();
        if (!converged)
        {
            steps += Settle();
            var (again, more) = Newton();
            (converged, steps) = (again, steps + more);
        }

        var worst = Worst();
        return new SteadyOutcome(converged, Math.Abs(balance.Net[worst]) / Throughput(), worst, steps);
    }

    private (bool Converged, int Steps) Newton()
    {
        for (var k = 0; k < NewtonSteps; k++)
        {
            if (IsBalanced()) return (true, k);
            Direction(0);
            if (!LineSearch()) return (false, k);
        }

        return (IsBalanced(), NewtonSteps);
    }

    private bool LineSearch()
    {
        var size = Size();
        Array.Copy(balance.Pressure, before, before.Length);
        for (var share = 1.0; share >= LeastShare; share /= 2)
        {
            Move(share);
            balance.Evaluate(withSlopes: true);
            if (Size() <= (1 - (1e-4 * share)) * size) return true;
        }

        Array.Copy(before, balance.Pressure, before.Length);
        balance.Evaluate(withSlopes: true);
        return false;
    }

    /// <summary>Implicit steps in time with a growing step: the network settles as it would if each cell were a small vessel.</summary>
    private int Settle()
    {
        // Capacities such that a first step moves pressures by no more than a fraction of what there is.
        var rate = 1e-9;
        var size = Size();
        for (var k = 0; k < SettlingSteps; k++)
        {
            if (IsBalanced()) return k;
            Array.Copy(balance.Pressure, before, before.Length);
            Direction(rate);
            Move(1);
            balance.Evaluate(withSlopes: true);
            var next = Size();
            rate = Math.Clamp(rate * Math.Clamp(next / size, 0.2, 2), 1e-22, 1e-7);
            size = next;
        }

        return SettlingSteps;
    }

    /// <summary>The step that meets the balance to first order; a rate above zero keeps it short.</summary>
    private void Direction(double rate)
    {
        if (rate > 0)
        {
            for (var i = 0; i < step.Length; i++) balance.System.Values[i] -= rate;
        }

        balance.System.Factor();
        for (var i = 0; i < step.Length; i++) step[i] = -balance.Net[i + 1];
        balance.System.Solve(step);
    }

    private void Move(double share)
    {
        for (var i = 0; i < step.Length; i++)
        {
            if (!balance.IsPinned(i + 1)) balance.Pressure[i + 1] = before[i + 1] + (share * Math.Clamp(step[i], -LongestStep, LongestStep));
        }
    }

    private bool IsBalanced() => Math.Abs(balance.Net[Worst()]) <= Tolerance * Throughput();

    private double Throughput()
    {
        // Without a pump the oil comes from pressures fixed outside.
        if (balance.Pumped > 0) return balance.Pumped;
        var through = 0.0;
        foreach (var rate in balance.Flow) through += Math.Abs(rate);
        return Math.Max(through / 2, 1e-9);
    }

    private int Worst()
    {
        var worst = 0;
        for (var cell = 1; cell < balance.Net.Length; cell++)
        {
            // Not a number counts as worst.
            if (!(Math.Abs(balance.Net[cell]) <= Math.Abs(balance.Net[worst]))) worst = cell;
        }

        return worst;
    }

    private double Size()
    {
        var sum = 0.0;
        foreach (var net in balance.Net) sum += net * net;
        return double.IsNaN(sum) ? double.PositiveInfinity : Math.Sqrt(sum);
    }
}
