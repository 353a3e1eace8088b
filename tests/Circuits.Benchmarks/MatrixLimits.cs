using System.Diagnostics;
using System.Globalization;
using Circuits.Judging;
using Circuits.Reading;
using Circuits.Studies.Matrix;
using Circuits.Tests;
using Circuits.Tests.Outside;

namespace Circuits.Benchmarks;

/// <summary>
/// The limits of <c>matrix</c>, as ratios from one run: against clingo on the full demo unit, and over a generated unit of a million assemblies.
/// <c>matrix</c> alone runs both with a part of the generated unit; <c>matrix clingo [assemblies at once]</c>;
/// <c>matrix generated [assemblies]</c>; <c>matrix own [times]</c>, for a profiler.
/// </summary>
internal static class MatrixLimits
{
    /// <summary>Assemblies that clingo is asked about one by one.</summary>
    private const int OneByOne = 12;

    /// <summary>Assemblies of the generated unit that one thread and two are measured with.</summary>
    private const int TwoCores = 1 << 15;

    /// <summary>How often each is measured.</summary>
    private const int Rounds = 3;

    /// <summary>How often one thread and two are measured.</summary>
    private const int Pairs = 5;

    public static int Run(string[] args)
    {
        Print($"{Environment.ProcessorCount} cores");
        var number = args.Length > 1 ? long.Parse(args[1], CultureInfo.InvariantCulture) : 0;
        if (args is ["own", ..]) Own((int)number);
        if (args.Length == 0 || args[0] == "clingo") AgainstClingo(number > 0 ? (int)number : 96);
        if (args.Length == 0 || args[0] == "generated") Generated(number > 0 ? number : args.Length > 0 ? long.MaxValue : 1 << 14);
        return 0;
    }

    /// <summary>The full unit again and again, for a profiler.</summary>
    private static void Own(int times)
    {
        var space = MatrixSpace.Of(CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml")).Unit!)!;
        for (var k = 0; k < times; k++)
        {
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var networks = new HashSet<UInt128>();
            var (collections, pause) = (GC.CollectionCount(0), GC.GetTotalPauseDuration());
            var cpu = Process.GetCurrentProcess().TotalProcessorTime;
            var seconds = Time(space, space.Count, 1, entry => networks.Add(entry.Network));
            cpu = Process.GetCurrentProcess().TotalProcessorTime - cpu;
            Print($"full unit, {space.Count} assemblies, {networks.Count} networks: {1000 * seconds / space.Count:0.000} ms, {cpu.TotalMilliseconds / space.Count:0.000} ms of processor and {(GC.GetTotalAllocatedBytes(precise: true) - before) / space.Count / 1000} kB an assembly; {GC.CollectionCount(0) - collections} collections, {(GC.GetTotalPauseDuration() - pause).TotalMilliseconds:0} ms");
        }
    }

    private static void AgainstClingo(int atOnce)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml")).Unit!;
        var space = MatrixSpace.Of(unit)!;
        var cold = Time(space, space.Count, 1) / space.Count;
        var cores = Math.Min(2, Environment.ProcessorCount);
        var judge = new UnitJudge(unit);
        AssemblyReport ReportOf(long index, int of) => judge.Report(space.At(index * space.Count / of));
        var single = Enumerable.Range(0, OneByOne).Select(i => new ClingoBatch(unit, [ReportOf(i, OneByOne)]).Facts()).ToList();
        var all = new ClingoBatch(unit, Enumerable.Range(0, atOnce).Select(i => ReportOf(i, atOnce))).Facts();

        // In turn, and the best of each: a neighbour's load must not fall on one of them alone.
        var (own, both, oneByOne, together) = (double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
        for (var round = 0; round < Rounds; round++)
        {
            own = Math.Min(own, Time(space, space.Count, 1) / space.Count);
            both = Math.Min(both, Time(space, space.Count, cores) / space.Count);
            if (!ClingoProgram.IsInstalled) continue;
            oneByOne = Math.Min(oneByOne, Seconds(() =>
            {
                foreach (var facts in single) _ = ClingoProgram.Derive(facts).Count();
            }) / OneByOne);
            together = Math.Min(together, Seconds(() => _ = ClingoProgram.Derive(all).Count()) / atOnce);
        }

        Print($"full unit, {space.Count} assemblies, {unit.Gears.Length} gears, best of {Rounds}: {cores} threads, as matrix runs here: {1000 * both:0.000} ms an assembly; one thread {1000 * own:0.000} ms ({1000 * cold:0.000} ms in a fresh process)");
        if (!ClingoProgram.IsInstalled)
        {
            Print(ClingoProgram.Absent);
            return;
        }

        Print($"clingo, one assembly a call: {1000 * oneByOne:0.0} ms an assembly: matrix as it runs here is {oneByOne / both:0} times faster, on one thread {oneByOne / own:0} times (in a fresh process {oneByOne / cold:0}); wanted: 100");
        Print($"clingo, {atOnce} assemblies at once: {1000 * together:0.0} ms an assembly: matrix as it runs here is {together / both:0} times faster, on one thread {together / own:0} times (in a fresh process {together / cold:0}); wanted: 20");
    }

    private static void Generated(long most)
    {
        var read = CircuitReader.ReadText(GeneratedUnit.Text(), "generated.yaml");
        foreach (var finding in read.Findings) Print($"{finding.Place} {finding.Rule}: {finding.Message}");
        var space = MatrixSpace.Of(read.Unit!)!;
        most = Math.Min(most, space.Count);
        var cores = Math.Min(2, Environment.ProcessorCount);
        Time(space, Math.Min(most, 1 << 10), 1);
        for (var count = Math.Min(most, 1 << 10); ; count = Math.Min(most, count * 4))
        {
            var networks = new HashSet<UInt128>();
            var time = Time(space, count, cores, entry => networks.Add(entry.Network));
            Print($"generated unit, {count} of {space.Count} assemblies, {networks.Count} networks, {cores} threads: {time:0.0} s, {1000 * time / count:0.0000} ms an assembly, most memory {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB");
            if (count == most) break;
        }

        // In turn, and the middle of the rounds' ratios: the machine's speed may change from one minute to the next. What its cores
        // give at most is what two runs of half the work give that know nothing of one another.
        var part = Math.Min(most, TwoCores);
        var (two, apart) = (new List<double>(), new List<double>());
        for (var round = 0; round < Pairs; round++)
        {
            var one = Watched("one thread", () => Time(space, part, 1));
            two.Add(one / Watched("two threads", () => Time(space, part, 2)));
            apart.Add(one / Watched("two halves apart", () => Seconds(() => Parallel.Invoke(
                () => Take(space, (0, part / 2), 1, null), () => Take(space, (part / 2, part), 1, null)))));
        }

        two.Sort();
        apart.Sort();
        Print($"{part} assemblies, middle of {Pairs} rounds: two threads {two[Pairs / 2]:0.00} times as fast as one; wanted: 1.7; the two halves apart: {apart[Pairs / 2]:0.00} times");
    }

    /// <summary>Seconds to judge assemblies that lie evenly over the whole, as pieces of a few.</summary>
    private static double Time(MatrixSpace space, long count, int threads, Action<MatrixEntry>? take = null) =>
        Seconds(() => Take(space, (0, count), threads, take));

    private static void Take(MatrixSpace space, (long From, long To) range, int threads, Action<MatrixEntry>? take) =>
        MatrixRun.Run<IReadOnlyList<MatrixEntry>>(space, range, threads, () => entries => entries, entries =>
        {
            foreach (var entry in entries) take?.Invoke(entry);
        }, CancellationToken.None);

    private static double Watched(string what, Func<double> work)
    {
        var (collections, pause, used) = (GC.CollectionCount(0), GC.GetTotalPauseDuration(), Process.GetCurrentProcess().TotalProcessorTime);
        var seconds = work();
        Print($"{what}: {seconds:0.00} s, {(Process.GetCurrentProcess().TotalProcessorTime - used).TotalSeconds:0.00} s of processor; {GC.CollectionCount(0) - collections} collections, {(GC.GetTotalPauseDuration() - pause).TotalSeconds:0.00} s");
        return seconds;
    }

    private static double Seconds(Action work)
    {
        var watch = Stopwatch.StartNew();
        work();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Print(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private static void Print(string line) => Console.WriteLine(line);
}
