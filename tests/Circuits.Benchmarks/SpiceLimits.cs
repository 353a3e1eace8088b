using System.Diagnostics;
using System.Globalization;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;
using Circuits.Studies.Pressures;
using Circuits.Studies.Shifts;
using Circuits.Tests;
using Circuits.Tests.Outside;
using Circuits.Tests.Solving.Flow;

namespace Circuits.Benchmarks;

/// <summary>The limits of flow, as ratios from one run: steady states and shifts against ngspice, and the shifts of the full unit.</summary>
internal static class SpiceLimits
{
    private static readonly FlowConditions Oil = new(850, 8e-6, default);

    /// <summary>Error in fill time that both sides may make.</summary>
    private const double Allowed = 2e-3;

    private const double Filled = 0.99;

    /// <summary>Tolerance of steps so short that their times count as exact.</summary>
    private const double Exact = 1e-6;

    private static readonly (string Options, double Step)[] Attempts =
    [
        .. from tolerance in new[] { "reltol=1e-2 abstol=1e-4 vntol=1e-2", "reltol=1e-3 abstol=1e-5 vntol=1e-3", "reltol=1e-4 abstol=1e-6 vntol=1e-4" }
        from step in new[] { 2e-2, 5e-3, 1e-3 }
        select (tolerance, step),
    ];

    public static int Run()
    {
        Print($"{Environment.ProcessorCount} cores");
        if (!SpiceProgram.IsInstalled) Print(SpiceProgram.Absent);
        foreach (var passages in new[] { 60, 200, 1000, 5000 }) Steady(passages);
        return RunShifts(SpiceProgram.IsInstalled);
    }

    /// <summary>Shifts alone; against ngspice where that is asked for.</summary>
    public static int RunShifts(bool simulate = false)
    {
        foreach (var (unit, from, to) in new[] { ("rill", "1", "2"), ("weir", "1", "2"), ("firth", "5", "6") }) Shift(unit, from, to, simulate);
        AllShifts();
        return 0;
    }

    /// <summary>All shifts of the demo units, as the command makes them, on one core; and how far their times are off those of very short steps.</summary>
    private static void AllShifts()
    {
        foreach (var name in new[] { "firth", "weir", "rill" }) AllShifts(name);
    }

    private static void AllShifts(string name)
    {
        var unit = Demo(name);
        var assembly = Assembly.DefaultOf(unit);
        var plans = ShiftPlans.Of(unit);
        var conditions = ShiftStudy.ConditionsOf(unit);
        var exact = Times(ShiftStudy.Run(assembly, null, conditions, plans, Exact)).ToList();
        foreach (var tolerance in new[] { 1e-2, 1e-3, 1e-4 })
        {
            var (best, watch) = (double.PositiveInfinity, Stopwatch.StartNew());
            ShiftReport report;
            do
            {
                var start = watch.Elapsed.TotalSeconds;
                report = ShiftStudy.Run(assembly, null, conditions, plans, tolerance);
                best = Math.Min(best, watch.Elapsed.TotalSeconds - start);
            }
            while (watch.Elapsed.TotalSeconds < 2);
            var pairs = Times(report).Zip(exact).Where(pair => pair.First.HasValue && pair.Second.HasValue).Select(pair => Math.Abs(pair.First!.Value - pair.Second!.Value)).ToList();
            Print($"{name}, {report.Shifts.Length} shifts and engagements, tolerance {tolerance}{(tolerance == ShiftTimer.Tolerance ? " (the command's)" : "")}: {best:0.000} s, "
                + $"{report.Shifts.Sum(pair => pair.Here.Samples.Length - 1)} samples; {pairs.Count} times off by {pairs.Max():0.000} ms at most, {Math.Sqrt(pairs.Average(off => off * off)):0.0000} ms rms");
        }
    }

    private static IEnumerable<double?> Times(ShiftReport report) => report.Shifts.SelectMany(pair => pair.Here.Clutches)
        .SelectMany(clutch => new[] { clutch.FillMs, clutch.HoldsMs, clutch.LetsGoMs, clutch.ReleasedMs });

    /// <summary>One shift, each side at the loosest tolerance with which the time that the slowest clutch takes to fill is right to 0.2 %.</summary>
    private static void Shift(string name, string from, string to, bool simulate)
    {
        var unit = Demo(name);
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var point = PressureStudy.PointsOf(unit)[^1];
        var conditions = FlowConditions.Of(unit, point.Celsius, point.RevolutionsPerMinute, []);
        var timed = new TimedFlow(flow.Flow, flow.Balance);
        var start = flow.Solve(conditions, from);
        var filled = flow.Flow.Pistons.Select(_ => double.NaN).ToArray();
        var before = new double[filled.Length];
        Time(1.5, 1e-6, out _);
        var coming = Enumerable.Range(0, filled.Length).Where(i => filled[i] > 0 && flow.Flow.Pistons[i].Clutch >= 0).MaxBy(i => filled[i]);
        var exact = filled[coming];
        var length = 1.3 * exact;
        foreach (var tolerance in new[] { 1e-1, 3e-2, 1e-2, 3e-3, 1e-3, 3e-4, 1e-4 })
        {
            Time(length, tolerance, out var outcome);
            if (!(Math.Abs(filled[coming] - exact) <= Allowed * exact)) continue;
            var off = Math.Abs(filled[coming] - exact) / exact;
            var (warm, own) = (Stopwatch.StartNew(), double.PositiveInfinity);
            while (warm.Elapsed.TotalSeconds < 1) own = Math.Min(own, Time(length, tolerance, out _));
            Print($"{name} {from}-{to}, {flow.Flow.Cells - 1} cells: {flow.Flow.Pistons[coming].Name} fills in {1e3 * exact:0.00} ms; {outcome.Steps} steps in {1e3 * own:0.00} ms, {outcome.Rejected} rejected, {off:0.000 %} off (tolerance {tolerance})");
            if (simulate) Simulate(flow, conditions, from, to, coming, exact, own);
            return;
        }

        double Time(double seconds, double tolerance, out TimedOutcome outcome)
        {
            start.Pressures.CopyTo(flow.Balance.Pressure);
            flow.Balance.Set(flow.Static(to).Inputs, conditions);
            Array.Fill(filled, double.NaN);
            var (last, watch) = (0.0, Stopwatch.StartNew());
            outcome = timed.Run(conditions, [], seconds, tolerance, time =>
            {
                for (var i = 0; i < filled.Length; i++)
                {
                    var share = flow.Flow.Pistons[i].At(flow.Balance.Pressure, 0).Share;
                    if (double.IsNaN(filled[i]) && share > Filled) filled[i] = time == 0 ? 0 : last + ((time - last) * (Filled - before[i]) / (share - before[i]));
                    before[i] = share;
                }

                last = time;
            });
            return watch.Elapsed.TotalSeconds;
        }
    }

    private static void Simulate(FlowCase flow, FlowConditions conditions, string from, string to, int coming, double exact, double own)
    {
        var netlist = new SpiceNetlist(flow.Flow, conditions);
        var (best, said) = (double.PositiveInfinity, "");
        foreach (var (options, step) in Attempts)
        {
            // Where its iteration finds no state to begin with, it settles first; that time does not count.
            foreach (var settling in new[] { 0, 0.5 })
            {
                string Text(double seconds) => netlist.Shift(flow.Static(from), flow.Static(to).Inputs, settling, seconds, step, [coming], options, settling > 0);
                var (whole, data) = Least(Text(1.3 * exact));
                if (data is null) continue;
                var seconds = whole - Least(Text(1e-8)).Seconds;
                var filled = SpiceNetlist.Crossing(SpiceNetlist.Samples(data, 1).Select(sample => (sample[0] - settling, sample[1])), Filled);
                var off = Math.Abs(filled - exact) / exact;
                if (off <= Allowed && seconds < best)
                    (best, said) = (seconds, FormattableString.Invariant($"{off:0.000 %} off ({options}, steps of {1e3 * step} ms at most)"));
                break;
            }
        }

        Print(best < 1e9 ? $"  ngspice .tran: {1e3 * best:0} ms, {said}: {best / own:0} times; wanted: 30" : $"  ngspice .tran: none of its runs came to an end with that error");
    }

    /// <summary>The same network, each time with another feed, from no pressure at all; both stop where they are sure of six digits.</summary>
    private static void Steady(int passages)
    {
        var network = RandomHoles.Of(passages, 1);
        var balance = new FlowBalance(network);
        var solver = new SteadyFlow(network, balance);
        var (steps, rounds) = (0, 200_000 / passages);
        for (var warm = 0; warm < 2; warm++) (_, steps) = Rounds(rounds);
        var own = Enumerable.Range(0, 3).Min(_ => Rounds(rounds).Seconds) / rounds;
        Print($"{passages} passages, {network.Elements.Length} holes, {network.Pattern.Filled} entries: {1e6 * own:0} us a steady state, {steps / (double)rounds:0.0} linear systems, {1e6 * own / passages:0.00} us a passage");
        if (!SpiceProgram.IsInstalled) return;
        var netlist = new SpiceNetlist(network, Oil);
        var repeats = Math.Max(3, 4000 / passages);
        var one = Simulate(netlist.Repeated(1e3, 1));
        var many = Simulate(netlist.Repeated(1e3, 1 + repeats));
        var theirs = (many.Seconds - one.Seconds) / repeats;
        balance.Set(Oil, [(1, 1e6)]);
        Array.Clear(balance.Pressure, 2, passages - 1);
        solver.Solve();
        var apart = Enumerable.Range(1, passages).Max(cell => Math.Abs(one.Values[$"v(c{cell})"] - (balance.Pressure[cell] / 1e3)));
        Print($"  ngspice .op, {repeats} in one process: {1e6 * theirs:0} us: {theirs / own:0} times; wanted: 50. {many.Stepped} of them only by steps of conductance. Farthest apart: {apart:0.0e0} of 1000 kPa");

        (double Seconds, int Steps) Rounds(int count)
        {
            var (all, watch) = (0, Stopwatch.StartNew());
            for (var k = 0; k < count; k++)
            {
                balance.Set(Oil, [(1, 1e6 + (1e3 * (k % 10)))]);
                Array.Clear(balance.Pressure, 2, passages - 1);
                var outcome = solver.Solve();
                if (!outcome.Converged) throw new InvalidOperationException($"{outcome}");
                all += outcome.Steps;
            }

            return (watch.Elapsed.TotalSeconds, all);
        }
    }

    /// <summary>The quickest of three runs, whole process and all, and what it wrote; nothing where it gave up.</summary>
    private static (double Seconds, string? Data) Least(string netlist)
    {
        var (least, data) = (double.PositiveInfinity, (string?)null);
        for (var k = 0; k < 3; k++)
        {
            var watch = Stopwatch.StartNew();
            var (text, files) = SpiceProgram.Run(netlist);
            least = Math.Min(least, watch.Elapsed.TotalSeconds);
            if (text.Contains("aborted", StringComparison.Ordinal)) return (least, null);
            data = files.GetValueOrDefault("pistons.data");
        }

        return (least, data);
    }

    private static (double Seconds, Dictionary<string, double> Values, int Stepped) Simulate(string netlist)
    {
        var watch = Stopwatch.StartNew();
        var (text, _) = SpiceProgram.Run(netlist);
        return (watch.Elapsed.TotalSeconds, SpiceProgram.Values(text), text.Split("Starting dynamic gmin stepping").Length - 1);
    }

    private static Unit Demo(string name) => CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;

    private static void Print(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private static void Print(string line) => Console.WriteLine(line);
}
