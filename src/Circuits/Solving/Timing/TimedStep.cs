using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>
/// One step in time: two implicit stages of second order, stiffly stable. What each cell holds is carried on by what flowed, to the last
/// drop; pressures follow from it as exactly as the stages are solved. Holds the work arrays of one thread.
/// </summary>
/// <remarks>Source: R. Alexander, Diagonally implicit Runge-Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14 (1977).</remarks>
internal sealed class TimedStep
{
    private static readonly double Gamma = 1 - (1 / Math.Sqrt(2));
    private const int Iterations = 12;

    /// <summary>After so many iterations the imbalance must have fallen to a tenth, else a shorter step is tried.</summary>
    private const int Trials = 8;

    /// <summary>Imbalance of a stage, as a fraction of what the pump gives. What is left over is carried into the next.</summary>
    private const double StageTolerance = 1e-7;

    /// <summary>What rounding leaves of the volume in a cell, as a fraction.</summary>
    private const double Rounding = 1e-15;

    /// <summary>A spool's travel may be this many times less exact than a clutch's stroke.</summary>
    private const double TravelScale = 20;

    /// <summary>Pressure, Pa, below which an error does not count.</summary>
    private const double PressureScale = 5e4;

    /// <summary>
    /// What of the second divided difference of the rates at 0, gamma and 1 counts as error: the method's own on a linear system, 0.0404 of the
    /// cube of the step, is 0.138 of it.
    /// </summary>
    private const double ErrorShare = 0.138;

    private static readonly double Early = ErrorShare / Gamma;
    private static readonly double Middle = ErrorShare / (Gamma * (Gamma - 1));
    private static readonly double Late = ErrorShare / (1 - Gamma);

    private readonly FlowNetwork flow;
    private readonly FlowBalance balance;
    private readonly PistonStates pistons;
    private readonly Store store;
    private readonly double[] start;
    private readonly double[] held;
    private readonly double[] target;
    private readonly double[] rate;
    private readonly double[] first;
    private readonly double[] second;
    private readonly double[] step;
    private readonly double[] before;
    private readonly double[] travel;
    private readonly double[] travelTarget;
    private readonly double[] travelStart;
    private readonly double[] travelFirst;
    private readonly double[] travelSecond;
    private readonly double capacity;
    private double through;
    private double lastPart;
    private bool knowsRates;

    public TimedStep(FlowNetwork flow, FlowBalance balance, PistonStates pistons)
    {
        (this.flow, this.balance, this.pistons) = (flow, balance, pistons);
        store = new Store(flow, pistons);
        start = new double[flow.Cells];
        held = new double[flow.Cells];
        target = new double[flow.Cells];
        rate = new double[flow.Cells];
        first = new double[flow.Cells];
        second = new double[flow.Cells];
        Slope = new double[flow.Cells];
        step = new double[flow.Cells - 1];
        before = new double[flow.Cells];
        travel = new double[flow.Spools.Length];
        travelTarget = new double[flow.Spools.Length];
        travelStart = new double[flow.Spools.Length];
        travelFirst = new double[flow.Spools.Length];
        travelSecond = new double[flow.Spools.Length];
        capacity = flow.Pistons.Select(piston => piston.ApplyArea * piston.Stroke).DefaultIfEmpty(1e-6).Max();
    }

    /// <summary>Pressures at the start of the step, Pa.</summary>
    public double[] Start => start;

    /// <summary>How pressures change as the step begins, Pa/s, where <see cref="KnowsSlope"/>.</summary>
    public double[] Slope { get; }

    /// <summary>Whether what flows as a step begins is known: not where something has just been switched.</summary>
    public bool KnowsSlope => knowsRates;

    /// <summary>What the pump gave in the last step that was tried, m3.</summary>
    public double Pumped { get; private set; }

    /// <summary>What went to sump and to pressures fixed from outside, m3.</summary>
    public double Drained { get; private set; }

    /// <summary>Begins a run from the pressures in the balance.</summary>
    /// <param name="conditions">The conditions.</param>
    public void Begin(FlowConditions conditions)
    {
        store.Set(conditions);
        balance.Lag(null, 0);
        balance.Evaluate(withSlopes: false);
        for (var i = 0; i < travel.Length; i++) travel[i] = balance.TravelOf(i);
        knowsRates = false;
        Array.Copy(balance.Pressure, start, start.Length);
        store.Fill(start);
        Array.Copy(store.Held, held, held.Length);
    }

    /// <summary>Where the step that was tried last was furthest from an answer.</summary>
    public int WorstCell { get; private set; }

    /// <summary>Oil in all cells at the pressures as they stand, m3.</summary>
    public double Total()
    {
        store.Fill(balance.Pressure);
        var sum = 0.0;
        for (var cell = 1; cell < held.Length; cell++) sum += store.Held[cell];
        return sum;
    }

    /// <summary>Tries a step from where the last one that was taken ended.</summary>
    /// <param name="length">s.</param>
    /// <param name="tolerance">Error allowed, as a fraction of pressures and strokes.</param>
    /// <param name="command">Sets what is commanded at a part of the step.</param>
    /// <returns>Its error over what is allowed, infinite when a stage finds no answer; and the order of that estimate.</returns>
    public (double Error, int Order) Try(double length, double tolerance, Action<double> command)
    {
        var part = Gamma * length;
        command(part);
        Array.Copy(held, target, target.Length);
        Array.Copy(travel, travelTarget, travel.Length);
        if (!Stage(part)) return (double.PositiveInfinity, 1);
        var (given, gone) = (balance.Pumped, balance.Drained);
        for (var i = 0; i < first.Length; i++) first[i] = RateOf(i, part);
        for (var i = 0; i < travel.Length; i++)
        {
            travelFirst[i] = (balance.TravelOf(i) - travel[i]) / part;
            travelTarget[i] = travel[i] + ((1 - Gamma) * length * travelFirst[i]);
        }

        command(length);
        for (var cell = 1; cell < target.Length; cell++) target[cell] = held[cell] + ((1 - Gamma) * length * first[cell]);
        if (!Stage(part)) return (double.PositiveInfinity, 1);
        Pumped = length * (((1 - Gamma) * given) + (Gamma * balance.Pumped));
        Drained = length * (((1 - Gamma) * gone) + (Gamma * balance.Drained));
        for (var i = 0; i < second.Length; i++) second[i] = RateOf(i, part);
        for (var i = 0; i < travel.Length; i++) travelSecond[i] = (balance.TravelOf(i) - travelTarget[i]) / part;
        return (Error(length, tolerance), knowsRates ? 3 : 2);
    }

    /// <summary>Takes the step that was tried last.</summary>
    public void Take()
    {
        for (var cell = 1; cell < held.Length; cell++) held[cell] = target[cell] + (second[cell] * lastPart);
        Array.Copy(balance.Pressure, start, start.Length);
        Array.Copy(second, rate, rate.Length);
        for (var i = 0; i < travel.Length; i++) travel[i] = balance.TravelOf(i);
        Array.Copy(travelSecond, travelStart, travel.Length);
        knowsRates = true;
    }

    /// <summary>Takes it back.</summary>
    public void Undo() => Array.Copy(start, balance.Pressure, start.Length);

    private double RateOf(int cell, double part) => balance.Net[cell] + ((store.Held[cell] - target[cell]) / part);

    /// <summary>Finds how pressures change with what flows as the next step begins.</summary>
    public void FindSlope()
    {
        balance.System.Clear();
        store.TakeSlopes(balance, 1);
        balance.System.Factor();
        for (var i = 0; i < step.Length; i++) step[i] = balance.IsPinned(i + 1) ? 0 : -rate[i + 1];
        balance.System.Solve(step);
        for (var i = 0; i < step.Length; i++) Slope[i + 1] = balance.IsPinned(i + 1) ? 0 : step[i];
    }

    /// <summary>Solves for the pressures at which each cell has taken up, since its target, what flows in over the part of a step.</summary>
    private bool Stage(double part)
    {
        lastPart = part;
        balance.Lag(travelTarget, part / FlowDefaults.SpoolLag);
        Evaluate(part);
        var begin = Largest();
        for (var k = 0; k < Iterations; k++)
        {
            var size = Largest();
            if (k >= Trials && size > 0.1 * begin) break;
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

        WorstCell = LargestCell();
        return false;
    }

    private void Evaluate(double part)
    {
        balance.Evaluate(withSlopes: true);
        through = Math.Max(balance.Pumped, 1e-5);
        store.Fill(balance.Pressure);
        for (var cell = 1; cell < target.Length; cell++)
        {
            if (!balance.IsPinned(cell)) balance.Net[cell] -= (store.Held[cell] - target[cell]) / part;
        }

        store.TakeSlopes(balance, 1 / part);
    }

    private double Largest()
    {
        var largest = Math.Abs(balance.Net[LargestCell()]);
        return double.IsNaN(largest) ? double.PositiveInfinity : largest;
    }

    private int LargestCell()
    {
        var largest = 0;
        for (var cell = 0; cell < balance.Net.Length; cell++)
        {
            if (double.IsNaN(balance.Net[cell])) return cell;
            if (Math.Abs(balance.Net[cell]) > Math.Abs(balance.Net[largest])) largest = cell;
        }

        return largest;
    }

    /// <summary>
    /// What the step may be off, filtered by the system so that what is stiff does not count, against the tolerance in pressure and in stroke. Where
    /// the rates at its start are not known it is held against the method of first order within.
    /// </summary>
    private double Error(double length, double tolerance)
    {
        var over = 1 / Gamma;
        balance.System.Factor();
        for (var i = 0; i < step.Length; i++)
        {
            step[i] = balance.IsPinned(i + 1) ? 0
                : knowsRates ? over * ((Early * rate[i + 1]) + (Middle * first[i + 1]) + (Late * second[i + 1]))
                : second[i + 1] - first[i + 1];
        }

        balance.System.Solve(step);
        var largest = 0.0;
        for (var i = 0; i < step.Length; i++)
        {
            var allowed = tolerance * (PressureScale + Math.Abs(balance.Pressure[i + 1]));
            var error = Math.Abs(step[i]) / allowed;
            if (error <= largest) continue;
            WorstCell = i + 1;
            largest = error;
            if (double.IsNaN(error)) return error;
        }

        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var slope = pistons.At(i, balance.Pressure).Slope;
            var change = piston.ApplyArea * (piston.Apply > 0 ? step[piston.Apply - 1] : 0);
            change -= piston.ReleaseArea * (piston.Release > 0 ? step[piston.Release - 1] : 0);
            largest = Math.Max(largest, Math.Abs(slope * change) / tolerance);
        }

        for (var i = 0; i < travel.Length; i++)
        {
            var change = knowsRates ? length * ((Early * travelStart[i]) + (Middle * travelFirst[i]) + (Late * travelSecond[i])) : Gamma * length * (travelSecond[i] - travelFirst[i]);
            largest = Math.Max(largest, Math.Abs(change) / (TravelScale * tolerance * (1 + (Gamma * length / FlowDefaults.SpoolLag))));
        }

        return largest;
    }
}
