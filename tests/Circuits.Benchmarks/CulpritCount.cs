using System.Diagnostics;
using System.Globalization;
using Circuits.Tests.Judging;

namespace Circuits.Benchmarks;

/// <summary>Counts how often findings name the one opening that was changed, over random units.</summary>
internal static class CulpritCount
{
    /// <summary>Counts and prints them.</summary>
    /// <param name="args">How many units; 4,000 unless said.</param>
    /// <returns>0 when at least 95 of 100 of each kind of change are named.</returns>
    public static int Run(string[] args)
    {
        var units = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 4000;
        var watch = Stopwatch.StartNew();
        var halves = new System.Collections.Concurrent.ConcurrentBag<IReadOnlyList<Culprits.Tally>>();
        var cores = Environment.ProcessorCount;
        Parallel.For(0, cores, core => halves.Add(Culprits.Count(first: 1_000_000UL + (ulong)(core * (long)units / cores), count: units / cores)));
        Console.WriteLine($"{cores} cores, {units} units, one change of each kind");
        var enough = true;
        foreach (var change in Enum.GetValues<OpeningChange>())
        {
            var tallies = halves.SelectMany(half => half).Where(tally => tally.Change == change).ToList();
            var (wrong, named) = (tallies.Sum(tally => tally.Wrong), tallies.Sum(tally => tally.Named));
            enough &= named >= 0.95 * wrong;
            Console.WriteLine(FormattableString.Invariant($"{change}: makes something wrong in {wrong} units; named in {named}, {100.0 * named / wrong:0.0} % (wanted: 95)"));
            foreach (var line in tallies.SelectMany(tally => tally.Missed).Take(5)) Console.WriteLine($"  {line}");
        }

        Console.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:0} s"));
        return enough ? 0 : 1;
    }
}
