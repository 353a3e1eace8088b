using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Remedies;

/// <summary>What a remedy may use, and how far to look.</summary>
public sealed record RemedyOptions
{
    /// <summary>The revisions at hand besides what is fitted, part by part in the order of the unit's parts; null for every revision.</summary>
    public ImmutableArray<ImmutableArray<Revision>>? AtHand { get; init; }

    /// <summary>Most pairs of work on the bench that are tried; the default is 20000.</summary>
    public int MostPairs { get; init; } = 20_000;

    /// <summary>Told, now and then, how many assemblies have been solved.</summary>
    public Action<int> Progress { get; init; } = _ => { };
}

/// <summary>Looks for what makes a bad assembly right: other parts, or work on the parts that are there.</summary>
public static class RemedySearch
{
    /// <summary>Looks for remedies. The answer is the same whenever and wherever it is asked.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="start">The assembly to be mended.</param>
    /// <param name="options">What may be used, and how far to look.</param>
    /// <param name="stop">Breaks the search off.</param>
    /// <exception cref="OperationCanceledException">The search was broken off.</exception>
    public static RemedyReport Run(UnitJudge judge, Assembly start, RemedyOptions options, CancellationToken stop = default)
    {
        var judged = new RemedyJudge(judge, start, options.Progress, stop);
        if (judged.IsRightBefore)
            return new RemedyReport(judged.Before, true, [], new PartSearchExtent(0, null, true, 0), [], BenchSearchExtent.None);
        var (parts, partExtent) = PartSearch.Run(judged, options.AtHand ?? [.. start.Unit.Parts.Select(part => part.Revisions)]);
        var (bench, benchExtent) = new BenchSearch(judged, options.MostPairs).Run();
        return new RemedyReport(judged.Before, false, parts, partExtent, bench, benchExtent);
    }
}
