using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Studies.Changes;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;
using Circuits.Tests;
using Circuits.Tests.Studies.Diagnosis;

namespace Circuits.Benchmarks;

/// <summary>Diagnosis against its limits: time from a cold start, closed loops over the fault libraries, and how many tests the advice takes.</summary>
internal static class DiagnoseLimits
{
    private const int Seed = 20251;

    /// <summary>How often solving with and without what is known is measured.</summary>
    private const int Rounds = 3;

    private static readonly int Threads = Math.Min(2, Environment.ProcessorCount);

    /// <summary>Measures and prints all of it. Each limit that is missed counts.</summary>
    /// <param name="units">The units whose loops are closed; all demo units when none is named.</param>
    /// <returns>0 when every limit is kept.</returns>
    public static int Run(params IReadOnlyList<string> units)
    {
        var missed = 0;
        Times(ref missed);
        foreach (var name in units.Count > 0 ? units : ["rill", "weir", "firth"])
        {
            var solver = SolverOf(name);
            var singles = solver.Singles(Threads);
            Singles(name, solver, singles, ref missed);
            Noise(name, solver, singles, ref missed);
            Doubles(name, solver, singles, name switch { "rill" => 200, "weir" => 60, _ => 30 }, ref missed);
        }

        TestLimits.Run(SolverOf("rill"), Threads, Limit, ref missed);
        Console.WriteLine(missed == 0 ? "every limit is kept" : Text($"{missed} limits are missed"));
        return missed == 0 ? 0 : 1;
    }

    private static EffectSolver SolverOf(string name)
    {
        var path = Path.Combine(Repository.Root, "circuits", name, name + ".yaml");
        var unit = CircuitReader.ReadFile(path).Unit ?? throw new InvalidOperationException($"{path} has errors");
        return new EffectSolver(new UnitJudge(unit), Assembly.DefaultOf(unit));
    }

    /// <summary>A line with what was measured and what it has to keep to.</summary>
    private static void Limit(string what, bool kept, ref int missed)
    {
        if (!kept) missed++;
        Console.WriteLine($"{(kept ? "kept  " : "MISSED")} {what}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // The first thing this process does, so that loading and compiling the code count.
    private static void Times(ref int missed)
    {
        var start = Process.GetCurrentProcess().StartTime;
        var solver = SolverOf("firth");
        var reader = new EvidenceReader(solver.Judge);
        ImmutableArray<Evidence> told = [reader.Complaint("no reverse").Evidence!, reader.Healthy("2").Evidence!, reader.Healthy("3").Evidence!];
        var found = DiagnosisStudy.Run(solver, told, new DiagnosisOptions { Pairs = false, Threads = Threads });
        var seconds = (DateTime.Now - start).TotalSeconds;
        var compiled = CompiledProgram.Seconds("diagnose", CompiledProgram.Unit("firth"), "--complaint", "no reverse", "--healthy", "2,3", "--singles");
        var cold = Text($"firth, single faults, from a cold start: {seconds:0.00} s in this process, {(compiled is { } least ? Text($"{least:0.00} s as the compiled program, advice and report with it") : CompiledProgram.Absent)} (2 s), {found.Faults} faults, {solver.Asked} gears, {solver.Solved} solved, {1 - ((double)solver.Solved / solver.Asked):0.0 %} reused, {Environment.ProcessorCount} cores, load {Load()}");
        Limit(cold, Math.Min(seconds, compiled ?? seconds) < 2, ref missed);

        // In turn, and the best of each: a neighbour's load must not fall on one of them alone.
        ImmutableArray<Assembly> assemblies = [.. solver.Faults.Select(fault => fault.In(solver.Assembly))];
        var (reused, scratch, solves, all) = (double.PositiveInfinity, double.PositiveInfinity, 0, 0);
        for (var round = 0; round < Rounds; round++)
        {
            var again = new EffectSolver(solver.Judge, solver.Assembly);
            var anew = new EffectSolver(solver.Judge, solver.Assembly) { Forgets = true };
            reused = Math.Min(reused, Time(() => again.Solve(assemblies, Threads)));
            scratch = Math.Min(scratch, Time(() => anew.Solve(assemblies, Threads)));
            (solves, all) = (again.Solved, anew.Solved);
        }

        Console.WriteLine(Text($"       warm, best of {Rounds}: {reused:0.00} s with reuse ({solves / reused:0} solves a second), {scratch:0.00} s solving every candidate from scratch ({all / scratch:0}): {scratch / reused:0.00} times as long"));

        // Two complaints that no single fault explains, so that pairs are needed.
        told = [reader.Complaint("no reverse").Evidence!, reader.Complaint("no 5").Evidence!, reader.Healthy("2").Evidence!, reader.Healthy("3").Evidence!];
        var pairs = new EffectSolver(solver.Judge, solver.Assembly);
        DiagnosisReport? report = null;
        var both = Time(() => report = DiagnosisStudy.Run(pairs, told, new DiagnosisOptions { Threads = Threads }));
        Limit(
            Text($"firth, pairs of faults: {both:0.00} s (30 s), {report!.Pairs} pairs, {pairs.Asked} gears, {pairs.Solved} solved, {1 - ((double)pairs.Solved / pairs.Asked):0.0 %} reused, {pairs.Solved / both:0} solves a second"),
            both < 30, ref missed);
    }

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    private static double Time(Action work)
    {
        var watch = Stopwatch.StartNew();
        work();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Singles(string name, EffectSolver solver, ImmutableArray<ImmutableArray<GearEffect>> singles, ref int missed)
    {
        var (shown, first, alone, classes) = (0, 0, 0, new HashSet<string>());
        for (var i = 0; i < singles.Length; i++)
        {
            var told = ClosedLoop.Told(solver, singles[i]);
            if (told.All(item => item.Degree([], solver.Sound) > 0)) continue;
            shown++;
            var report = DiagnosisStudy.Run(solver, told, new DiagnosisOptions { Pairs = false, Threads = Threads });
            if (report.Explaining is not [var best, ..] || !best.Members.Any(Is(solver.Faults[i]))) continue;
            first++;
            if (best.Members.Length == 1) alone++;
            classes.Add(string.Join("; ", best.Members.Select(member => PhraseWords.Of(member.Name)).Order(StringComparer.Ordinal)));
        }

        Limit(
            Text($"{name}, {shown} single faults that show: {(double)first / shown:0.0 %} first (95 %), {alone} of them alone, the rest in classes that no gauge and no drive tells apart ({classes.Count} classes); {singles.Length - shown} faults show nothing"),
            first >= 0.95 * shown, ref missed);
    }

    private static Func<Candidate, bool> Is(params ReadOnlySpan<Fault> faults)
    {
        var codes = new HashSet<string>();
        foreach (var fault in faults) codes.Add(fault.Code);
        return member => member.Faults.Length == codes.Count && member.Faults.All(fault => codes.Contains(fault.Code));
    }

    // One observation in ten is left out or told wrongly, half and half.
    private static void Noise(string name, EffectSolver solver, ImmutableArray<ImmutableArray<GearEffect>> singles, ref int missed)
    {
        var random = new Random(Seed);
        var reader = new EvidenceReader(solver.Judge);
        var (shown, high) = (0, 0);
        for (var i = 0; i < singles.Length; i++)
        {
            var right = ClosedLoop.Told(solver, singles[i]);
            if (right.All(item => item.Degree([], solver.Sound) > 0)) continue;
            var told = right.Where(_ => true).Select(item => random.NextDouble() switch
            {
                < 0.05 => null,
                < 0.1 => Wrong(solver, reader, item, random),
                _ => item,
            }).OfType<Evidence>().ToImmutableArray();
            if (told.All(item => item.Degree([], solver.Sound) > 0)) continue;
            shown++;
            var report = DiagnosisStudy.Run(solver, told, new DiagnosisOptions { Pairs = false, Threads = Threads });
            if (report.Explaining.Concat(report.Near).Take(5).Any(known => known.Members.Any(Is(solver.Faults[i])))) high++;
        }

        Limit(Text($"{name}, a tenth of the observations wrong or missing: {(double)high / shown:0.0 %} of {shown} in the top five (80 %)"), high >= 0.8 * shown, ref missed);
    }

    private static Evidence? Wrong(EffectSolver solver, EvidenceReader reader, Evidence item, Random random) => item switch
    {
        Evidence.Reading reading => reading with { Kilopascals = random.NextDouble() * 1200 },
        Evidence.Felt { IsHealthy: true } felt => reader.Complaint($"no drive in {solver.Unit.Gears[felt.In[0].Gear].Name}").Evidence,
        Evidence.Felt felt => reader.Healthy(solver.Unit.Gears[felt.In[0].Gear].Name).Evidence,
        _ => null,
    };

    private static void Doubles(string name, EffectSolver solver, ImmutableArray<ImmutableArray<GearEffect>> singles, int samples, ref int missed)
    {
        var random = new Random(Seed);
        var (tried, high, single) = (0, 0, 0);
        var seconds = 0.0;
        for (var draws = 0; tried < samples && draws < 50 * samples; draws++)
        {
            var (i, j) = (random.Next(singles.Length), random.Next(singles.Length));
            if (i == j || !solver.Faults[i].GoesWith(solver.Faults[j]) || !Shows(solver, singles[i]) || !Shows(solver, singles[j])) continue;
            tried++;
            var truth = solver.Solve([ChangedAssembly.Of(solver.Assembly, [.. solver.Faults[i].Changes, .. solver.Faults[j].Changes])], 1)[0];
            var told = ClosedLoop.Told(solver, truth);
            DiagnosisReport? report = null;
            seconds += Time(() => report = DiagnosisStudy.Run(solver, told, new DiagnosisOptions { Threads = Threads }));

            // The pair, or what no gauge and no drive tells from it: one of its faults that hides the other, say.
            var known = new Candidate([solver.Faults[i], solver.Faults[j]], truth, [], 0);
            var place = report!.Explaining.Take(5).ToList().FindIndex(found => found.Members.Any(Is(solver.Faults[i], solver.Faults[j])) || found.First.IsLike(known));
            if (place < 0)
            {
                Console.WriteLine($"       not in the top five: {known.Name}");
                continue;
            }

            high++;
            if (report.Explaining[place].First.Faults.Length == 1) single++;
        }

        Limit(
            Text($"{name}, {tried} sampled pairs: {(double)high / tried:0.0 %} in the top five (90 %), {single} of them hidden behind a single fault that looks the same; {seconds / tried:0.00} s each"),
            high >= 0.9 * tried, ref missed);
    }

    private static bool Shows(EffectSolver solver, ImmutableArray<GearEffect> effects) => effects.Zip(solver.Sound).Any(pair => !pair.First.IsLike(pair.Second));
}
