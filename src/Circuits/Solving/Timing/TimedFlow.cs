using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>How a run in time went.</summary>
/// <param name="Finished">Whether it came to its end.</param>
/// <param name="Seconds">How far it came.</param>
/// <param name="Steps">Steps taken.</param>
/// <param name="Rejected">Steps that were tried and taken back.</param>
/// <param name="Pumped">What the pump gave, m3.</param>
/// <param name="Lost">What came in, less what went out and what is stored, as a fraction of what came in.</param>
internal readonly record struct TimedOutcome(bool Finished, double Seconds, int Steps, int Rejected, double Pumped, double Lost);

/// <summary>
/// Pressures and pistons over time: what flows into a cell is stored there. Steps are implicit and stiffly stable (the two-stage
/// singly diagonally implicit method of second order), and as long as the tolerance allows. Holds the work arrays of one thread.
/// </summary>
/// <remarks>Source: R. Alexander, Diagonally implicit Runge-Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14 (1977).</remarks>
internal sealed class TimedFlow
{
    private static readonly double Gamma = 1 - (1 / Math.Sqrt(2));
    private const double LeastStep = 1e-9;
    private const double LongestStep = 0.02;

    /// <summary>What happens within this time, s, need only come out right: a ball that snaps over, a track that fills.</summary>
    private const double Instant = 1e-5;

    private const double FirstStep = 1e-5;
    private const int Iterations = 12;

    /// <summary>Imbalance of a stage, as a fraction of what the pump gives.</summary>
    private const double StageTolerance = 1e-9;

    /// <summary>A spool's travel may be this many times less exact than a clutch's stroke.</summary>
    private const double TravelScale = 20;

    /// <summary>What rounding leaves of the volume in a cell, as a fraction.</summary>
    private const double Rounding = 1e-15;

    /// <summary>Pressure, Pa, below which an error does not count.</summary>
    private const double PressureScale = 5e4;

    private readonly FlowNetwork flow;
    private readonly FlowBalance balance;
    private readonly Store store;
    private readonly double[] start;
    private readonly double[] held;
    private readonly double[] target;
    private readonly double[] first;
    private readonly double[] step;
    private readonly double[] before;
    private readonly double[] travel;
    private readonly double[] travelTarget;
    private readonly double[] travelRate;
    private double through;
    private double capacity;

    public TimedFlow(FlowNetwork flow, FlowBalance balance)
    {
        this.flow = flow;
        this.balance = balance;
        store = new Store(flow);
        start = new double[flow.Cells];
        held = new double[flow.Cells];
        target = new double[flow.Cells];
        first = new double[flow.Cells];
        step = new double[flow.Cells - 1];
        before = new double[flow.Cells];
        travel = new double[flow.Spools.Length];
        travelTarget = new double[flow.Spools.Length];
        travelRate = new double[flow.Spools.Length];
    }

    /// <summary>Runs from the pressures in the balance, whose gear and conditions are set, for a time.</summary>
    /// <param name="conditions">The conditions.</param>
    /// <param name="commands">Commands that change while it runs.</param>
    /// <param name="seconds">How long.</param>
    /// <param name="tolerance">Error allowed in a step, as a fraction of pressures and strokes.</param>
    /// <param name="observe">Called at the start and after each step, with the time; reads the balance.</param>
    /// <param name="enough">Asked after each step; where it says so, the run ends there and counts as finished.</param>
    public TimedOutcome Run(
        FlowConditions conditions, IReadOnlyList<CommandTimes> commands, double seconds, double tolerance, Action<double> observe,
        Func<bool>? enough = null)
    {
        store.Set(conditions);
        capacity = flow.Pistons.Select(piston => piston.ApplyArea * piston.Stroke).DefaultIfEmpty(1e-6).Max();
        Command(commands, 0);
        balance.Lag(null, 0);
        balance.Evaluate(withSlopes: false);
        for (var i = 0; i < travel.Length; i++) travel[i] = balance.TravelOf(i);
        store.Fill(balance.Pressure, balance.Heads);
        var held0 = store.Held.Sum();
        observe(0);
        double time = 0, pumped = 0, drained = 0, length = FirstStep;
        int steps = 0, rejected = 0;
        while (time < seconds - 1e-12)
        {
            var take = Math.Min(Math.Min(length, seconds - time), NextPoint(commands, time) - time);
            Array.Copy(balance.Pressure, start, start.Length);
            store.Fill(start, balance.Heads);
            Array.Copy(store.Held, held, held.Length);
            var error = Step(commands, time, take, tolerance, out var given, out var gone);
            if (!(error <= 1) && (take > Instant || double.IsInfinity(error)))
            {
                rejected++;
                Array.Copy(start, balance.Pressure, start.Length);
                length = take * (double.IsFinite(error) ? Math.Clamp(0.8 / Math.Sqrt(error), 0.1, 0.7) : 0.2);
                if (length < LeastStep) break;
                continue;
            }

            time += take;
            steps++;
            for (var i = 0; i < travel.Length; i++) travel[i] = balance.TravelOf(i);
            pumped += given;
            drained += gone;
            length = Math.Clamp(take * Math.Clamp(0.8 / Math.Sqrt(error + 1e-9), 0.3, 3), Instant, LongestStep);
            observe(time);
            if (enough?.Invoke() == true) break;
        }

        store.Fill(balance.Pressure, balance.Heads);
        var lost = pumped - drained - (store.Held.Sum() - store.Held[0] - held0);
        return new TimedOutcome(time >= seconds - 1e-9 || enough?.Invoke() == true, time, steps, rejected, pumped, lost / Math.Max(pumped, 1e-9));
    }

    private static double NextPoint(IReadOnlyList<CommandTimes> commands, double time)
    {
        var next = double.PositiveInfinity;
        for (var i = 0; i < commands.Count; i++) next = Math.Min(next, commands[i].NextAfter(time));
        return next;
    }

    private void Command(IReadOnlyList<CommandTimes> commands, double time)
    {
        for (var i = 0; i < commands.Count; i++) balance.Command(commands[i].Regulator, commands[i].At(time));
    }

    /// <summary>One step; returns its error against what is allowed, infinite when a stage finds no answer.</summary>
    private double Step(IReadOnlyList<CommandTimes> commands, double time, double length, double tolerance, out double pumped, out double drained)
    {
        (pumped, drained) = (0, 0);
        var part = Gamma * length;
        Command(commands, time + part);
        Array.Copy(held, target, target.Length);
        Array.Copy(travel, travelTarget, travel.Length);
        if (!Stage(part)) return double.PositiveInfinity;
        var (given, gone) = (balance.Pumped, balance.Drained);
        for (var i = 0; i < first.Length; i++) first[i] = (store.Held[i] - held[i]) / part;
        for (var i = 0; i < travel.Length; i++)
        {
            travelRate[i] = (balance.TravelOf(i) - travel[i]) / part;
            travelTarget[i] = travel[i] + ((1 - Gamma) * length * travelRate[i]);
        }

        Command(commands, time + length);
        for (var cell = 1; cell < target.Length; cell++) target[cell] = held[cell] + ((1 - Gamma) * length * first[cell]);
        if (!Stage(part)) return double.PositiveInfinity;
        pumped = length * (((1 - Gamma) * given) + (Gamma * balance.Pumped));
        drained = length * (((1 - Gamma) * gone) + (Gamma * balance.Drained));
        return Error(part, tolerance);
    }

    /// <summary>Solves for the pressures at which each cell has taken up, since its target, what flows in over the part of a step.</summary>
    private bool Stage(double part)
    {
        balance.Lag(travelTarget, part / FlowDefaults.SpoolLag);
        Evaluate(part);
        for (var k = 0; k < Iterations; k++)
        {
            var size = Largest();
            if (size <= (StageTolerance * through) + (Rounding * capacity / part)) return true;
            balance.System.Factor();
            for (var i = 0; i < step.Length; i++) step[i] = -balance.Net[i + 1];
            balance.System.Solve(step);
            Array.Copy(balance.Pressure, before, before.Length);
            for (var share = 1.0; ; share /= 2)
            {
                for (var i = 0; i < step.Length; i++)
                {
                    if (!balance.IsPinned(i + 1)) balance.Pressure[i + 1] = before[i + 1] + (share * step[i]);
                }

                Evaluate(part);
                if (Largest() < size || share < 0.1) break;
            }
        }

        return false;
    }

    private void Evaluate(double part)
    {
        balance.Evaluate(withSlopes: true);
        through = Math.Max(balance.Pumped, 1e-5);
        store.Fill(balance.Pressure, balance.Heads);
        for (var cell = 1; cell < target.Length; cell++)
        {
            if (!balance.IsPinned(cell)) balance.Net[cell] -= (store.Held[cell] - target[cell]) / part;
        }

        store.TakeSlopes(balance, 1 / part);
    }

    private double Largest()
    {
        var largest = 0.0;
        foreach (var net in balance.Net)
        {
            if (!(Math.Abs(net) <= largest)) largest = Math.Abs(net);
        }

        return double.IsNaN(largest) ? double.PositiveInfinity : largest;
    }

    /// <summary>
    /// The difference from the method of first order within, filtered by the system so that what is stiff does not count, against
    /// the tolerance in pressure and in stroke.
    /// </summary>
    private double Error(double part, double tolerance)
    {
        balance.System.Factor();
        for (var i = 0; i < step.Length; i++)
        {
            var second = (store.Held[i + 1] - target[i + 1]) / part;
            step[i] = balance.IsPinned(i + 1) ? 0 : -(second - first[i + 1]);
        }

        balance.System.Solve(step);
        var worst = 0.0;
        for (var i = 0; i < step.Length; i++)
        {
            var allowed = tolerance * (PressureScale + Math.Abs(balance.Pressure[i + 1]));
            worst = Math.Max(worst, Math.Abs(step[i]) / allowed);
        }

        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var slope = piston.At(balance.Pressure, balance.Heads[i]).Slope;
            var change = piston.ApplyArea * (piston.Apply > 0 ? step[piston.Apply - 1] : 0);
            change -= piston.ReleaseArea * (piston.Release > 0 ? step[piston.Release - 1] : 0);
            worst = Math.Max(worst, Math.Abs(slope * change) / tolerance);
        }

        for (var i = 0; i < travel.Length; i++)
        {
            var change = balance.TravelOf(i) - travelTarget[i] - (part * travelRate[i]);
            worst = Math.Max(worst, Math.Abs(change) / (TravelScale * tolerance * (1 + (part / FlowDefaults.SpoolLag))));
        }

        return worst;
    }
}
