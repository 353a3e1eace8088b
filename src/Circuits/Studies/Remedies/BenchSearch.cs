using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Remedies;

/// <summary>
/// Looks for work on the parts that are there: one plug, hole or ball, then two at once. Every offer has been solved in every
/// gear. Two are looked for only when no single one does that can be undone and leaves nothing to be desired.
/// </summary>
/// <param name="judge">Judges assemblies.</param>
/// <param name="mostPairs">Most pairs that are tried.</param>
internal sealed class BenchSearch(RemedyJudge judge, int mostPairs)
{
    /// <summary>Most sizes of one hole that are judged in full once a coarse step has shown that the place is right.</summary>
    private const int MostSizes = 60;

    private readonly Assembly start = judge.Before.Assembly;
    private readonly BenchCandidates candidates = new(judge.Before.Assembly);
    private readonly List<Remedy> found = [];
    private readonly List<Change> pool = [];
    private readonly HashSet<Change> enough = [];
    private int plugs;
    private int holes;
    private int balls;

    public (ImmutableArray<Remedy> Remedies, BenchSearchExtent Extent) Run()
    {
        foreach (var ball in candidates.Balls())
        {
            balls++;
            Try(ball);
        }

        foreach (var plug in candidates.Plugs())
        {
            plugs++;
            Try(plug);
        }

        foreach (var at in candidates.HoleLocations()) TryHoles(at);
        var (pairs, possible) = found.Exists(remedy => remedy.CanBeUndone && remedy.Leaves.IsEmpty) ? (0, 0) : Pairs();

        // What eases one clutch and makes another harsh is no offer beside one that leaves nothing to be desired.
        if (found.Exists(remedy => remedy.Leaves.IsEmpty)) found.RemoveAll(remedy => !remedy.Leaves.IsEmpty);
        return ([.. found.OrderBy(Invasiveness).ThenBy(remedy => remedy.Leaves.Length).ThenBy(remedy => judge.DistanceToMatched(remedy.After))],
            new BenchSearchExtent(plugs, holes, balls, pairs, possible));
    }

    /// <summary>One before two; what can be undone before what cannot; then balls, plugs, sleeves, wider holes, new holes.</summary>
    private static int Invasiveness(Remedy remedy) =>
        (remedy.Changes.Length * 100) + (remedy.CanBeUndone ? 0 : 1000) + remedy.Changes.Max(change => change switch
        {
            ResizeBall or InsertBall => 1,
            DropBall => 2,
            PlugOpening => 3,
            SetHole { CanBeUndone: true } => 4,
            SetHole { Was: not null } => 5,
            _ => 6,
        });

    private AssemblyReport? Judge(params ImmutableArray<Change> changes) => judge.RightByWork(ChangedAssembly.Of(start, changes));

    private void Try(Change change)
    {
        pool.Add(change);
        if (Judge(change) is not { } report) return;
        enough.Add(change);
        Offer([change], report);
    }

    private void Offer(ImmutableArray<Change> changes, AssemblyReport report, ImmutableArray<Shape.Hole> sizes = default) =>
        found.Add(new Remedy(changes, report) { AsIn = candidates.AsIn(changes), Sizes = sizes.IsDefault ? [] : sizes, Leaves = judge.Leaves(report) });

    /// <summary>
    /// Sizes that other revisions have come first; then coarse steps. Where any does, the sizes around it are judged one by one,
    /// and the one is offered that leaves clutches controlled most like the matched set.
    /// </summary>
    private void TryHoles(SheetLocation at)
    {
        var known = BenchCandidates.KnownSizes(at).ToList();
        var steps = known.Concat(DrillSizes.Coarse.Select(DrillSizes.Metric)).OrderBy(size => size.Diameter.Millimetres).ToList();
        List<SetHole> sized = [.. (known.Count > 0 ? known : PairSizes(at)).Select(size => BenchCandidates.Hole(at, size)).Where(hole => !hole.IsSame)];
        pool.AddRange(sized);
        var right = new List<(Shape.Hole Size, AssemblyReport Report)>();
        var works = new bool[steps.Count];
        for (var i = 0; i < steps.Count; i++)
        {
            if (Sized(at, steps[i]) is not { } report) continue;
            works[i] = true;
            right.Add((steps[i], report));
        }

        if (right.Count == 0) return;
        enough.UnionWith(sized.Where(hole => right.Exists(pair => pair.Size.Diameter == hole.Hole.Diameter)));
        var like = right.MinBy(pair => judge.DistanceToMatched(pair.Report)).Size.Diameter.Millimetres;
        var near = Around(steps, works).Where(size => steps.TrueForAll(step => step.Diameter != size.Diameter))
            .OrderBy(size => Math.Abs(Math.Log(size.Diameter.Millimetres / like))).Take(MostSizes);
        foreach (var size in near)
        {
            if (Sized(at, size) is { } report) right.Add((size, report));
        }

        right.Sort((one, other) => one.Size.Diameter.Millimetres.CompareTo(other.Size.Diameter.Millimetres));
        var best = right.OrderBy(pair => judge.Leaves(pair.Report).Length).ThenBy(pair => judge.DistanceToMatched(pair.Report))
            .ThenBy(pair => known.Contains(pair.Size) ? 0 : 1).ThenBy(pair => pair.Size.Diameter.Millimetres).First();
        var left = judge.Leaves(best.Report).Length;
        Offer(
            [BenchCandidates.Hole(at, best.Size)], best.Report,
            [.. right.Where(pair => judge.Leaves(pair.Report).Length == left).Select(pair => pair.Size)]);
    }

    private AssemblyReport? Sized(SheetLocation at, Shape.Hole size)
    {
        var hole = BenchCandidates.Hole(at, size);
        if (hole.IsSame) return null;
        holes++;
        return Judge(hole);
    }

    /// <summary>Sizes from the last step that does not do up to the first that does, and so on around every run of steps that do.</summary>
    private static IEnumerable<Shape.Hole> Around(List<Shape.Hole> steps, bool[] works)
    {
        var sizes = Enumerable.Empty<Shape.Hole>();
        for (var i = 0; i < steps.Count; i++)
        {
            if (!works[i]) continue;
            var above = i == 0 ? 0.29 : steps[i - 1].Diameter.Millimetres;
            var below = i + 1 == steps.Count ? 10.1 : steps[i + 1].Diameter.Millimetres;
            sizes = sizes.Concat(DrillSizes.Between(above, below));
        }

        return sizes.DistinctBy(size => size.Diameter).OrderBy(size => size.Diameter.Millimetres);
    }

    /// <summary>For pairs a hole that no revision has is tried small, middling and large.</summary>
    private static IEnumerable<Shape.Hole> PairSizes(SheetLocation at) =>
        at.Openings.IsEmpty ? [DrillSizes.Metric(2), DrillSizes.Metric(5)] : [DrillSizes.Metric(1.6), DrillSizes.Metric(2.5), DrillSizes.Metric(5)];

    /// <summary>
    /// Two at once. Where one alone does that cannot be undone, two that can be are wanted, and no others. What matched sets have at their
    /// places comes first, so that a search that must stop early has seen the likeliest.
    /// </summary>
    private (int Tried, int Possible) Pairs()
    {
        var single = found.Count > 0;
        var usable = pool.Where(change => !enough.Contains(change) && (!single || change.CanBeUndone))
            .OrderBy(change => candidates.AsIn([change]).IsEmpty ? 1 : 0).ToList();
        var pairs = new List<(Change, Change)>();
        var possible = 0;
        for (var other = 1; other < usable.Count; other++)
        {
            for (var one = 0; one < other; one++)
            {
                if (usable[one].Claims.Any(usable[other].Claims.Contains) || IsOnePocket(usable[one], usable[other])) continue;
                possible++;
                if (pairs.Count < mostPairs) pairs.Add((usable[one], usable[other]));
            }
        }

        foreach (var (one, other) in pairs)
        {
            if (Judge(one, other) is { } report) Offer([one, other], report);
        }

        return (pairs.Count, possible);
    }

    private static bool IsOnePocket(Change one, Change other) => PocketOf(one) is { } pocket && pocket == PocketOf(other);

    private static PassageName? PocketOf(Change change) => change switch
    {
        DropBall drop => drop.Ball.Pocket.Name,
        ResizeBall resize => resize.Ball.Pocket.Name,
        InsertBall insert => insert.Ball.Pocket.Name,
        _ => null,
    };
}
