using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Remedies;

/// <summary>Looks for the fewest other parts that make an assembly right.</summary>
internal static class PartSearch
{
    /// <summary>Most assemblies that are solved; more would take hours on a unit with many parts.</summary>
    private const int Most = 20_000;

    /// <summary>Every choice of the fewest parts, in the order of the file.</summary>
    /// <param name="judge">Judges assemblies.</param>
    /// <param name="available">The revisions at hand, in the order of the unit's parts.</param>
    public static (ImmutableArray<Remedy> Remedies, PartSearchExtent Extent) Run(
        RemedyJudge judge, ImmutableArray<ImmutableArray<Revision>> available)
    {
        var start = judge.Before.Assembly;
        var parts = Enumerable.Range(0, start.Revisions.Length).Where(part => Others(part).Any()).ToImmutableArray();
        var tried = 0;
        for (var count = 1; count <= parts.Length; count++)
        {
            var found = ImmutableArray.CreateBuilder<Remedy>();
            foreach (var changes in Choices(parts, count, []))
            {
                if (tried++ >= Most) return (found.ToImmutable(), new PartSearchExtent(tried - 1, found.Count > 0 ? count : null, false, count));
                if (judge.Right(ChangedAssembly.Of(start, changes)) is { } report) found.Add(new Remedy(changes, report) { Leaves = judge.Leaves(report) });
            }

            if (found.Count > 0) return (found.ToImmutable(), new PartSearchExtent(tried, count, true, count));
        }

        return ([], new PartSearchExtent(tried, null, true, parts.Length));

        IEnumerable<Revision> Others(int part) => available[part].Where(revision => revision.Name != start.Revisions[part].Name);

        IEnumerable<ImmutableArray<Change>> Choices(ImmutableArray<int> from, int count, ImmutableArray<Change> so)
        {
            if (count == 0)
            {
                yield return so;
                yield break;
            }

            for (var i = 0; i + count <= from.Length; i++)
            {
                var part = from[i];
                foreach (var other in Others(part))
                {
                    Change fit = new FitRevision(start.Unit.Parts[part], other, start.Revisions[part].Name);
                    foreach (var choice in Choices(from[(i + 1)..], count - 1, so.Add(fit))) yield return choice;
                }
            }
        }
    }
}
