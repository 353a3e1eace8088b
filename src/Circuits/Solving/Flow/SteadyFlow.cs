namespace Circuits.Solving.Flow;

/// <summary>How a search for a steady state ended.</summary>
/// <param name="Converged">Whether every cell's balance is met.</param>
/// <param name="Residual">The largest imbalance, as a fraction of what flows into the network; 1 where it is no number at all.</param>
/// <param name="WorstCell">The cell that has it.</param>
/// <param name="Steps">How many linear systems were solved.</param>
internal readonly record struct SteadyOutcome(bool Converged, double Residual, int WorstCell, int Steps);

/// <summary>
/// Finds pressures at which what flows into every cell flows out again: Newton's method with steps halved until the
/// imbalance falls. Where that stalls, or leaves a spool elsewhere than at the stop it began at, cells are given a capacity and the
/// network is let settle from its start, in steps that grow as it does: of several states, it then ends in the one that it comes to
/// by itself, and in none that it would leave at a touch.
/// </summary>
internal sealed class SteadyFlow
{
    /// <summary>An imbalance below this fraction of what flows into the network is none.</summary>
    public const double Tolerance = 1e-9;

    private const int NewtonSteps = 80;
    private static readonly (double Growth, int Steps) Quick = (3, 120);
    private static readonly (double Growth, int Steps) Patient = (1.3, 1000);
    private const int StepIterations = 12;
    private const double StepTolerance = 1e-2;
    private const double FirstCapacity = 1e-8;
    private const double LeastCapacity = 1e-15;
    private const double LeastShare = 1.0 / 1024;

    /// <summary>A step of pressure that is never exceeded, Pa.</summary>
    private const double LongestStep = 1e6;

    /// <summary>How far oil shut in behind a ball may stand beyond what could have brought it there, Pa: the ball has to turn over.</summary>
    private const double Reach = 1e3 * FlowDefaults.BallBand;

    private readonly FlowBalance balance;
    private readonly int pump;
    private readonly double[] step;
    private readonly double[] before;
    private readonly double[] origin;
    private readonly double[] start;
    private readonly double[] found;
    private readonly double[] stops;

    public SteadyFlow(FlowNetwork flow, FlowBalance balance)
    {
        this.balance = balance;
        pump = flow.Pump;
        step = new double[flow.Cells - 1];
        before = new double[flow.Cells];
        origin = new double[flow.Cells];
        start = new double[flow.Cells];
        found = new double[flow.Cells];
        stops = new double[flow.Spools.Length];
    }

    /// <summary>Solves from the pressures in the balance as they stand; they are replaced.</summary>
    public SteadyOutcome Solve()
    {
        Array.Copy(balance.Pressure, start, start.Length);
        Evaluate();
        for (var i = 0; i < stops.Length; i++) stops[i] = balance.TravelOf(i);
        var (converged, steps) = Newton();
        if (!converged || !StandsWhereItBegan() || !IsWithinReach())
        {
            Array.Copy(balance.Pressure, found, found.Length);
            Array.Copy(start, balance.Pressure, start.Length);
            steps += Settle(Quick);
            var (again, more) = Newton();
            steps += more;
            if (!again && !converged)
            {
                Array.Copy(start, balance.Pressure, start.Length);
                steps += Settle(Patient);
                (again, more) = Newton();
                steps += more;
            }

            if (converged && !again)
            {
                Array.Copy(found, balance.Pressure, found.Length);
                Evaluate();
            }

            converged |= again;
        }

        var worst = Worst();
        var residual = Math.Abs(balance.Net[worst]) / Throughput();
        return new SteadyOutcome(converged, double.IsFinite(residual) ? residual : 1, worst, steps);
    }

    private bool StandsWhereItBegan()
    {
        for (var i = 0; i < stops.Length; i++)
        {
            if (stops[i] is > 0 and < 1 || stops[i] != balance.TravelOf(i)) return false;
        }

        return true;
    }

    /// <summary>
    /// Whether every pressure lies between sump and the highest that is there at the start or at the pump. Oil shut in elsewhere has been left there by
    /// a step on the way.
    /// </summary>
    private bool IsWithinReach()
    {
        var highest = pump > 0 ? balance.Pressure[pump] : 0;
        foreach (var pressure in start) highest = Math.Max(highest, pressure);
        foreach (var pressure in balance.Pressure)
        {
            if (pressure < -Reach || pressure > highest + Reach) return false;
        }

        return true;
    }

    private (bool Converged, int Steps) Newton()
    {
        for (var k = 0; k < NewtonSteps; k++)
        {
            if (IsBalanced()) return (true, k);
            Direction();
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
            Evaluate();
            if (Size() <= (1 - (1e-4 * share)) * size) return true;
        }

        Array.Copy(before, balance.Pressure, before.Length);
        Evaluate();
        return false;
    }

    /// <summary>
    /// Lets the network settle as it would if each cell were a small vessel: implicit steps in time, each solved, longer after
    /// every success and shorter after a failure. Where nothing settles, this does not either.
    /// </summary>
    /// <param name="pace">How much longer each step is than the one before that succeeded, and how many there are at most.</param>
    private int Settle((double Growth, int Steps) pace)
    {
        var capacity = FirstCapacity;
        var steps = 0;
        Evaluate();
        for (var k = 0; k < pace.Steps && capacity > LeastCapacity; k++)
        {
            Array.Copy(balance.Pressure, origin, origin.Length);
            if (StepInTime(capacity, ref steps))
            {
                capacity /= pace.Growth;
            }
            else
            {
                capacity *= 5;
                Array.Copy(origin, balance.Pressure, origin.Length);
            }
        }

        Evaluate();
        return steps;
    }

    /// <summary>One implicit step; capacity is volume by pressure and by the time of the step, m3/s per Pa.</summary>
    private bool StepInTime(double capacity, ref int steps)
    {
        EvaluateInTime(capacity);
        var first = Size();
        for (var k = 0; k < StepIterations; k++)
        {
            var size = Size();
            if (size <= StepTolerance * first || size <= Tolerance * Throughput()) return true;
            Direction();
            steps++;
            Array.Copy(balance.Pressure, before, before.Length);
            Move(1);
            EvaluateInTime(capacity);
            if (!(Size() < 2 * first)) return false;
        }

        return false;
    }

    /// <summary>A cell that nothing joins keeps its pressure.</summary>
    private void Evaluate()
    {
        balance.Evaluate(withSlopes: true);
        for (var i = 0; i < step.Length; i++)
        {
            if (balance.System.Values[i] == 0) balance.System.Values[i] = -1;
        }
    }

    private void EvaluateInTime(double capacity)
    {
        Evaluate();
        for (var i = 0; i < step.Length; i++)
        {
            if (balance.IsPinned(i + 1)) continue;
            balance.Net[i + 1] -= capacity * (balance.Pressure[i + 1] - origin[i + 1]);
            balance.System.Values[i] -= capacity;
        }
    }

    /// <summary>The step that meets the balance to first order.</summary>
    private void Direction()
    {
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

    private bool IsBalanced() => Throughput() is var through && double.IsFinite(through) && Math.Abs(balance.Net[Worst()]) <= Tolerance * through;

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
        for (var cell = 0; cell < balance.Net.Length; cell++)
        {
            if (double.IsNaN(balance.Net[cell])) return cell;
            if (Math.Abs(balance.Net[cell]) > Math.Abs(balance.Net[worst])) worst = cell;
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
