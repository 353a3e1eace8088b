using System.Diagnostics;
using System.Globalization;
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
        foreach (var (unit, from, to) in new[] { ("rill", "1", "2"), ("weir", "1", "2"), ("firth", "5", "6") }) Shift(unit, from, to);
        AllShifts();
        return 0;
    }

    /// <summary>All shifts of the full unit, as the command makes them, on one core.</summary>
    private static void AllShifts()
    {
        var unit = Demo("firth");
        var assembly = Assembly.DefaultOf(unit);
        var plans = ShiftPlans.Of(unit);
        var conditions = ShiftStudy.ConditionsOf(unit);
        var best = double.PositiveInfinity;
        for (var k = 0; k < 4; k++)
        {
            var watch = Stopwatch.StartNew();
            var report = ShiftStudy.Run(assembly, null, conditions, plans);
            var seconds = watch.Elapsed.TotalSeconds;
            if (k == 0) Print($"full unit, {report.Shifts.Length} shifts and engagements: {seconds:0.00} s in a fresh process");
            best = Math.Min(best, seconds);
        }

        Print($"  {best:0.000} s in one that has run, one core; wanted: well under 1");
    }

    /// <summary>One shift, each side at the loosest tolerance with which the time that the slowest clutch takes to fill is right to 0.2 %.</summary>
    private static void Shift(string name, string from, string to)
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
            Print($"{name} {from}-{to}, {flow.Flow.Cells - 1} cells: {flow.Flow.Pistons[coming].Name} fills in {1e3 * exact:0.00} ms; {outcome.Steps} steps in {1e3 * own:0.00} ms, {off:0.000 %} off (tolerance {tolerance})");
            if (SpiceProgram.IsInstalled) Simulate(flow, conditions, from, to, coming, exact, own);
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
