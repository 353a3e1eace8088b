using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;

namespace Circuits.Studies;

/// <summary>What one of many sets of changes comes to.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Assembly">The assembly with it.</param>
/// <param name="Verdicts">The verdict of each gear, in the order of the file.</param>
/// <param name="Changes">The worst of each change of gear over its conditions, in the order of the file; empty for the static answer.</param>
public sealed record ManyRow(string Name, Assembly Assembly, ImmutableArray<Verdict> Verdicts, ImmutableArray<(string Change, ShiftVerdict Verdict)> Changes)
{
    /// <summary>The worst gear's.</summary>
    public Verdict Verdict => Verdicts.IsEmpty ? Verdict.AsCharted : Verdicts.Max();

    /// <summary>The worst change's.</summary>
    public ShiftVerdict WorstChange => Changes.IsEmpty ? ShiftVerdict.Good : Changes.Max(change => change.Verdict);

    /// <summary>Whether there is nothing to complain of.</summary>
    public bool IsGood => Verdict == Verdict.AsCharted && WorstChange == ShiftVerdict.Good;
}

/// <summary>Answers many "what if" in one go, a row each: the verdicts that each has by itself.</summary>
public static class ManyChanges
{
    /// <summary>The rows, in the order asked for, each as soon as it and those before it are known.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="mode">What verdicts rest on.</param>
    /// <param name="asked">Assemblies by name.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public static IEnumerable<ManyRow> Run(
        Unit unit, JudgeMode mode, ImmutableArray<(string Name, Assembly Assembly)> asked, int threads, CancellationToken stop = default)
    {
        var judges = new ThreadLocal<UnitJudge>(() => new UnitJudge(unit, mode));
        return asked.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Max(1, threads)).WithMergeOptions(ParallelMergeOptions.NotBuffered).WithCancellation(stop)
            .Select(pair =>
            {
                var report = judges.Value!.Report(pair.Assembly);
                return new ManyRow(
                    pair.Name, pair.Assembly, [.. report.Gears.Select(gear => gear.Verdict)],
                    [.. report.Changes.GroupBy(change => change.Plan.Name).Select(same => (same.Key, same.Max(change => change.Verdict)))]);
            });
    }
}
