using System.Diagnostics;
using System.Globalization;
using Circuits.Tests.Outside;

namespace Circuits.Benchmarks;

/// <summary>Holds the pressures that verdicts rest on against a circuit simulator, for mixes with faults of every demo unit.</summary>
internal static class SpiceVerdictCount
{
    /// <summary>Compares and prints.</summary>
    /// <param name="args">How many assemblies; 200 unless said.</param>
    /// <returns>0 when none is apart.</returns>
    public static int Run(string[] args)
    {
        if (!SpiceProgram.IsInstalled)
        {
            Console.WriteLine(SpiceProgram.Absent);
            return 2;
        }

        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 200;
        var watch = Stopwatch.StartNew();
        var all = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new SpiceVerdicts(["rill", "weir", "firth"])).ToList();
        var next = -1;
        Parallel.ForEach(all, judged =>
        {
            while (Interlocked.Increment(ref next) is var seed && seed < count) judged.Compare(seed);
        });
        foreach (var judged in all)
        {
            Console.WriteLine(judged.Summary);
            foreach (var line in judged.Apart) Console.WriteLine($"  {line}");
        }

        Console.WriteLine(FormattableString.Invariant($"{Environment.ProcessorCount} cores, {watch.Elapsed.TotalSeconds:0} s"));
        return all.TrueForAll(judged => judged.Apart.Count == 0) ? 0 : 1;
    }
}
