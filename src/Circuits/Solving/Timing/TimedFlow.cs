using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>How a run in time went.</summary>
/// <param name="Finished">Whether it came to its end.</param>
/// <param name="Seconds">How far it came.</param>
/// <param name="Steps">Steps taken.</param>
/// <param name="Rejected">Steps that were tried and taken back.</param>
/// <param name="Pumped">What the pump gave, m3.</param>
/// <param name="Lost">What came in, less what went out and what is stored, as a fraction of what came in.</param>
/// <param name="WorstCell">Where the last step that was tried was furthest from an answer.</param>
internal readonly record struct TimedOutcome(bool Finished, double Seconds, int Steps, int Rejected, double Pumped, double Lost, int WorstCell);

/// <summary>
/// Pressures and pistons over time: what flows into a cell is stored there. Steps are as long as the tolerance allows, and end where a
/// piston touches, comes to a stop or leaves one, and where a command bends. Holds the work arrays of one thread.
/// </summary>
internal sealed class TimedFlow
{
    private const double LeastStep = 1e-9;
    private const double LongestStep = 0.05;

    /// <summary>What happens within this time, s, need only come out right: a ball that snaps over, a track that fills.</summary>
    private const double Instant = 1e-5;

    /// <summary>The longest step once a piston has touched or left a stop: pressures change fast from there.</summary>
    private const double AfterTurn = 2e-4;

    private const double FirstStep = 1e-5;

    /// <summary>A step may be so many times as long as the one before it; half as many times after one that was taken back.</summary>
    private const double Growth = 4;

    /// <summary>
    /// Most steps of a run, those taken back among them. A shift of the demo units takes less than a tenth of it (a test holds them to that); what takes this many hunts, and would for ever.
    /// </summary>
    public const int MostSteps = 20_000;

    /// <summary>How many samples are given within a step at most: enough that straight lines between them serve.</summary>
    private const int MostSamples = 16;

    private readonly FlowNetwork flow;
    private readonly FlowBalance balance;
    private readonly TimedStep step;
    private readonly double[] begin;
    private readonly double[] beginSlope;
    private readonly double[] end;
    private readonly Action<double> command;
    private IReadOnlyList<CommandTimes> commands = [];
    private double time;

    public TimedFlow(FlowNetwork flow, FlowBalance balance)
    {
        (this.flow, this.balance) = (flow, balance);
        Pistons = new PistonStates(flow, balance.Heads);
        step = new TimedStep(flow, balance, Pistons);
        begin = new double[flow.Cells];
        beginSlope = new double[flow.Cells];
        end = new double[flow.Cells];
        command = part => Command(time + part);
    }

    /// <summary>What each piston rests on.</summary>
    public PistonStates Pistons { get; }

    /// <summary>Runs from the pressures in the balance, whose gear and conditions are set, for a time.</summary>
    /// <param name="conditions">The conditions.</param>
    /// <param name="profiles">Commands that change while it runs.</param>
    /// <param name="seconds">How long.</param>
    /// <param name="tolerance">Error allowed in a step, as a fraction of pressures and strokes.</param>
    /// <param name="observe">
    /// Called at the start, after each step and, where pressures bend, within it, with the time; reads pressures and pistons.
    /// </param>
    /// <param name="enough">Asked after each step; where it says so, the run ends there and counts as finished.</param>
    public TimedOutcome Run(
        FlowConditions conditions, IReadOnlyList<CommandTimes> profiles, double seconds, double tolerance, Action<double> observe,
        Func<bool>? enough = null)
    {
        (commands, time) = (profiles, 0);
        Command(0);
        Pistons.Set(balance.Pressure);
        step.Begin(conditions);
        var held = step.Total();
        observe(0);
        double pumped = 0, drained = 0, length = FirstStep, growth = Growth;
        int steps = 0, rejected = 0;
        var (ended, round) = (false, false);
        while (!ended && time < seconds - 1e-12 && steps + rejected < MostSteps)
        {
            var take = Math.Min(Math.Min(length, seconds - time), NextPoint() - time);
            Pistons.Begin(step.Start);
            Pistons.RoundCorners = round || !step.KnowsSlope;
            var (error, order) = step.Try(take, tolerance, command);
            if (!(error <= 1) && (take > Instant || !double.IsFinite(error)))
            {
                rejected++;
                growth = Growth / 2;
                step.Undo();
                length = take * (double.IsFinite(error) ? Math.Clamp(0.8 * Math.Pow(error, -1.0 / order), 0.1, 0.7) : 0.2);
                if (length < LeastStep) break;
                continue;
            }

            var left = Pistons.RoundCorners ? 1 : Left(take);
            if (left < 1)
            {
                rejected++;
                step.Undo();
                (length, round) = left * take > Instant ? (left * take, false) : (Math.Min(take, Instant), true);
                continue;
            }

            round = false;

            pumped += step.Pumped;
            drained += step.Drained;
            steps++;
            var turned = Sample(take, tolerance, observe);
            length = Math.Clamp(take * Math.Clamp(0.8 * Math.Pow(error + 1e-9, -1.0 / order), 0.3, growth), Instant, turned ? AfterTurn : LongestStep);
            growth = Growth;
            ended = enough?.Invoke() == true;
        }

        var lost = pumped - drained - (step.Total() - held);
        return new TimedOutcome(ended || time >= seconds - 1e-9, time, steps, rejected, pumped, lost / Math.Max(pumped, 1e-9), step.WorstCell);
    }

    private double NextPoint()
    {
        var next = double.PositiveInfinity;
        for (var i = 0; i < commands.Count; i++) next = Math.Min(next, commands[i].NextAfter(time));
        return next;
    }

    private void Command(double at)
    {
        for (var i = 0; i < commands.Count; i++) balance.Command(commands[i].Regulator, commands[i].At(at));
    }

    /// <summary>The part of the step just tried after which a piston leaves its regime.</summary>
    private double Left(double take)
    {
        if (!step.KnowsSlope) return Pistons.FirstLeft(balance.Pressure, null);
        for (var cell = 0; cell < begin.Length; cell++) beginSlope[cell] = take * step.Slope[cell];
        return Pistons.FirstLeft(balance.Pressure, beginSlope);
    }

    /// <summary>
    /// Takes the step and gives samples of it. Between its ends pressures follow the cubic with the slopes that they have there; how
    /// far that bends away from the straight line says how many samples it takes.
    /// </summary>
    /// <returns>Whether a piston has come to another regime.</returns>
    private bool Sample(double take, double tolerance, Action<double> observe)
    {
        var bends = step.KnowsSlope;
        if (bends)
        {
            Array.Copy(step.Start, begin, begin.Length);
            for (var cell = 0; cell < begin.Length; cell++) beginSlope[cell] = take * step.Slope[cell];
        }

        step.Take();
        step.FindSlope();
        var samples = bends ? SamplesWithin(take, tolerance) : 1;
        if (samples > 1)
        {
            Array.Copy(balance.Pressure, end, end.Length);
            for (var k = 1; k < samples; k++)
            {
                var x = (double)k / samples;
                for (var cell = 1; cell < end.Length; cell++)
                {
                    if (!balance.IsPinned(cell)) balance.Pressure[cell] = Between(begin[cell], beginSlope[cell], end[cell], take * step.Slope[cell], x);
                }

                observe(time + (x * take));
            }

            Array.Copy(end, balance.Pressure, end.Length);
        }

        time += take;
        var moved = Pistons.Change(balance.Pressure);
        observe(time);
        if (!moved) return false;
        step.FindSlope();
        return true;
    }

    private int SamplesWithin(double take, double tolerance)
    {
        var worst = 0.0;
        foreach (var piston in flow.Pistons)
        {
            if (piston.Clutch < 0) continue;
            var bend = (piston.ApplyArea * Bend(piston.Apply)) - (piston.ReleaseArea * Bend(piston.Release));
            worst = Math.Max(worst, Math.Abs(bend) / Math.Max(piston.Full, piston.Preload));
        }

        return Math.Clamp((int)Math.Ceiling(Math.Sqrt(worst / tolerance)), 1, MostSamples);

        double Bend(int cell) => cell == 0 ? 0 : (beginSlope[cell] - (take * step.Slope[cell])) / 8;
    }

    /// <summary>The cubic through both ends with their slopes.</summary>
    private static double Between(double a, double slopeA, double b, double slopeB, double x)
    {
        var y = 1 - x;
        return (a * y * y * (1 + (2 * x))) + (b * x * x * (3 - (2 * x))) + (x * y * ((y * slopeA) - (x * slopeB)));
    }
}
