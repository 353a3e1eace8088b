using System.Diagnostics;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Faults;
using Circuits.Studies.Matrix;
using Circuits.Tests;
using Circuits.Tests.Judging;

namespace Circuits.Benchmarks;

/// <summary>Counts verdicts that contradict what <c>pressures</c> and <c>shifts</c> print: of every assembly of the demo units, and of every single fault of their matched sets.</summary>
internal static class Contradictions
{
    /// <summary>Counts and prints them.</summary>
    /// <param name="args">Of the full unit's assemblies and faults, every how manieth; all unless said.</param>
    /// <returns>0 when there are none.</returns>
    public static int Run(string[] args)
    {
        var every = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1;
        var all = 0;
        Console.WriteLine($"{Environment.ProcessorCount} cores");
        foreach (var name in new[] { "rill", "weir", "firth" })
        {
            var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
            var asked = Asked(unit).Where((_, i) => name != "firth" || i % every == 0).ToList();
            var watch = Stopwatch.StartNew();

            // A judge is one thread's.
            var truths = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new UnitJudge(unit)).Select(judge => (Judge: judge, Truth: new OneTruth(judge))).ToList();
            var next = -1;
            Parallel.ForEach(truths, pair =>
            {
                while (Interlocked.Increment(ref next) is var i && i < asked.Count)
                    pair.Truth.Compare(Words(asked[i]), asked[i], pair.Judge.Report(asked[i]));
            });
            var contradictions = truths.SelectMany(pair => pair.Truth.Contradictions).Order(StringComparer.Ordinal).ToList();
            var (compared, undecided) = (truths.Sum(pair => pair.Truth.Compared), truths.Sum(pair => pair.Truth.NotDecided));
            Console.WriteLine(FormattableString.Invariant(
                $"{name}: {asked.Count} assemblies, {compared} verdicts compared, {contradictions.Count} contradictions (wanted: 0), {100.0 * undecided / compared:0.00} % not decided (wanted: 1 at most); {watch.Elapsed.TotalSeconds:0} s"));
            foreach (var line in contradictions) Console.WriteLine($"  {line}");
            all += contradictions.Count;
        }

        return all == 0 ? 0 : 1;
    }

    private static IEnumerable<Assembly> Asked(Unit unit)
    {
        var space = MatrixSpace.Of(unit)!;
        for (var number = 0L; number < space.Count; number++) yield return space.At(number);
        foreach (var sound in unit.Matched.Select(set => Assembly.Of(unit, set)))
        {
            foreach (var fault in FaultLibrary.Of(sound)) yield return fault.In(sound);
        }
    }

    private static string Words(Assembly assembly) => string.Join(' ', assembly.Choice.Select(part => part.Value).Concat(assembly.Changes.Select(change => Circuits.Rendering.PhraseWords.Of(change))));
}
