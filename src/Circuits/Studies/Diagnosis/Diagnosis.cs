using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>How a diagnosis is made.</summary>
public sealed record DiagnosisOptions
{
    /// <summary>Whether pairs of faults are looked at; else single faults alone.</summary>
    public bool Pairs { get; init; } = true;

    /// <summary>How many pairs are solved at most.</summary>
    public int MostPairs { get; init; } = 8000;

    /// <summary>Up to how many pairs are all solved; of more, those that could explain everything.</summary>
    public int MostWhole { get; init; } = 4000;

    /// <summary>How many pairs are solved at most only because they touch a common passage and so may do something together.</summary>
    public int MostMeeting { get; init; } = 4000;

    /// <summary>For how many candidates, of singles and of pairs each, readings under a condition are worked out with oil flowing.</summary>
    public int MostFlow { get; init; } = 160;

    /// <summary>How many threads may work; the answer is the same.</summary>
    public int Threads { get; init; } = 1;
}

/// <summary>Two pieces of evidence that cannot both be true.</summary>
/// <param name="First">The one.</param>
/// <param name="Second">The other.</param>
/// <param name="Why">Why not, in a sentence.</param>
public sealed record Contradiction(Evidence First, Evidence Second, Phrase Why);

/// <summary>What may be wrong with a unit.</summary>
/// <param name="Assembly">The assembly as it should be.</param>
/// <param name="Sound">What it does then.</param>
/// <param name="Evidence">What was observed.</param>
/// <param name="Contradictions">What of it cannot all be true; when there is any, nothing else was looked at.</param>
/// <param name="SoundExplains">Whether the assembly explains everything without any fault; then nothing else was looked at.</param>
/// <param name="Explaining">Classes of candidates that explain everything, likeliest first.</param>
/// <param name="Near">Single faults that explain most of it, when none explains everything; likeliest first.</param>
/// <param name="Silent">Faults that no driver and no gauge notices.</param>
/// <param name="Faults">How many single faults were looked at.</param>
/// <param name="Pairs">How many pairs were solved.</param>
/// <param name="PairsComplete">Whether every pair that may explain everything was solved.</param>
public sealed record DiagnosisReport(
    Assembly Assembly, ImmutableArray<GearEffect> Sound, ImmutableArray<Evidence> Evidence, ImmutableArray<Contradiction> Contradictions, bool SoundExplains,
    ImmutableArray<CandidateClass> Explaining, ImmutableArray<CandidateClass> Near, ImmutableArray<Fault> Silent, int Faults, int Pairs, bool PairsComplete)
{
    /// <summary>What the effects of faults rest on.</summary>
    public required JudgeMode Mode { get; init; }

    /// <summary>The conditions at which gears were judged; empty for the static answer.</summary>
    public required ImmutableArray<OperatingPoint> Points { get; init; }

    /// <summary>The gears that a driver knows, by number.</summary>
    public ImmutableArray<int> Driven { get; init; } = [];

    /// <summary>When nothing explains everything: a smallest set of what was told that no single fault explains together.</summary>
    public ImmutableArray<Evidence> Conflict { get; init; } = [];

    /// <summary>Whether readings under a condition were worked out with oil flowing, for the likeliest candidates.</summary>
    public bool Flowing { get; init; }

    /// <summary>What hydraulics cannot explain and looks the same, as a sentence each.</summary>
    public ImmutableArray<Phrase> LookAlikes { get; init; } = [];
}

/// <summary>Works backwards from what is observed to what may be wrong.</summary>
public static class DiagnosisStudy
{
    private const int MostNear = 10;

    /// <summary>Makes a diagnosis.</summary>
    /// <param name="solver">The solver of the assembly as it should be.</param>
    /// <param name="evidence">What was observed; at least one piece.</param>
    /// <param name="options">How to make it.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public static DiagnosisReport Run(EffectSolver solver, ImmutableArray<Evidence> evidence, DiagnosisOptions options, CancellationToken stop = default)
    {
        var unit = solver.Unit;
        evidence = FlowPredictions.Attach(solver.Assembly, evidence, out var flow);
        var driven = new GearWords(solver.Judge).Driven;
        var report = new DiagnosisReport(solver.Assembly, solver.Sound, evidence, [], false, [], [], [], 0, 0, true)
        {
            Mode = solver.Judge.Mode,
            Points = solver.Judge.Points,
            Driven = driven,
            LookAlikes = Diagnosis.LookAlikes.Of(unit, evidence),
        };
        var contradictions = Contradictions.Of(unit, evidence);
        if (!contradictions.IsEmpty) return report with { Contradictions = contradictions };
        if (evidence.All(item => item.Degree([], solver.Sound) > 0)) return report with { SoundExplains = true };

        var faults = solver.Faults;
        var total = faults.Sum(fault => fault.Weight);
        var effects = solver.Singles(options.Threads, stop);
        var singles = Refined([.. faults.Select((fault, i) => Ranking.Of([fault], effects[i], evidence, total, driven))]);
        var candidates = new List<Candidate>(singles.Where(single => single.ExplainsAll));
        var solved = 0;
        var complete = true;
        if (options.Pairs)
        {
            (var pairs, complete) = new PairSearch(singles, solver.Sound, evidence).Find(
                options.MostPairs, options.MostWhole, options.MostMeeting, () => Footprints.Of(solver.Assembly, faults));
            solved = pairs.Length;
            var both = SolvePairs(solver, pairs, evidence, options.Threads, stop);
            ImmutableArray<Candidate> ranked =
            [
                .. Enumerable.Range(0, pairs.Length).Where(i => !both[i].IsDefault).Select(i => Ranking.Of([faults[pairs[i].A], faults[pairs[i].B]], both[i], evidence, total, driven)),
            ];
            candidates.AddRange(Refined(ranked).Where(candidate => candidate.ExplainsAll));
        }

        var near = candidates.Count > 0
            ? []
            : Ranking.Sorted(singles.Where(single => evidence.Where((item, i) => single.Degrees[i] > 0 && item.Degree([], solver.Sound) == 0).Any()));
        return report with
        {
            Explaining = CandidateClass.Of(Ranking.Sorted(candidates)),
            Near = [.. CandidateClass.Of(near).Take(MostNear)],
            Silent = [.. faults.Where((_, i) => effects[i].Zip(solver.Sound).All(pair => pair.First.IsLike(pair.Second)))],
            Faults = faults.Length,
            Pairs = solved,
            PairsComplete = complete,
            Flowing = flow is not null,
            Conflict = candidates.Count > 0
                ? []
                : Diagnosis.Conflict.Of(evidence, singles.Select(single => single.Degrees).Append([.. evidence.Select(item => item.Degree([], solver.Sound))])),
        };

        // Of those that fit all that needs no flow, the likeliest are weighed again by what oil that flows makes the gauges read.
        ImmutableArray<Candidate> Refined(ImmutableArray<Candidate> ranked)
        {
            if (flow is null) return ranked;
            ImmutableArray<int> leading =
            [
                .. Enumerable.Range(0, ranked.Length).Where(i => !evidence.Where((item, n) => !NeedsFlow(item) && ranked[i].Degrees[n] == 0).Any())
                    .OrderByDescending(i => Math.Round(Ranking.WithoutReadings(ranked[i], evidence), 9)).ThenBy(i => i).Take(options.MostFlow),
            ];
            flow.Prepare([.. leading.Select(i => ranked[i].Faults)], options.Threads, stop);
            var again = leading.ToHashSet();
            return [.. ranked.Select((candidate, i) => again.Contains(i) ? Ranking.Of(candidate.Faults, candidate.Effects, evidence, total, driven) : candidate)];
        }
    }

    /// <summary>Whether static pressures do not tell if a piece of evidence fits.</summary>
    internal static bool NeedsFlow(Evidence item) => item is Evidence.Reading { Flow: not null };

    /// <summary>Pairs, gear by gear in the order of the evidence; one that contradicts any of it is given up there.</summary>
    private static ImmutableArray<ImmutableArray<GearEffect>> SolvePairs(
        EffectSolver solver, ImmutableArray<(int A, int B)> pairs, ImmutableArray<Evidence> evidence, int threads, CancellationToken stop)
    {
        var faults = solver.Faults;

        // What is out of the ordinary contradicts most pairs, so its gears come first.
        ImmutableArray<int> order =
        [
            .. evidence.Where(item => item.Degree([], solver.Sound) == 0).Concat(evidence).SelectMany(item => item.Gears)
                .Concat(Enumerable.Range(0, solver.Sound.Length)).Distinct(),
        ];
        return solver.Solve(
            pairs.Length, i => solver.Assembly.With([faults[pairs[i].A], faults[pairs[i].B]]),
            (i, gear, known) => evidence.Any(item => !NeedsFlow(item) && item.Gears.Contains(gear) && item.Gears.All(its => known[its] is not null)
                && item.Degree([faults[pairs[i].A], faults[pairs[i].B]], known) == 0),
            order, threads, stop);
    }
}
