using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>
/// Engine off, lever still in the range that binds: push the vehicle. Clutches without oil let go, a mechanical lock does not (common practice, no
/// source).
/// </summary>
internal sealed class RollTests(Unit unit, DiagnosisReport report) : ITestSource
{
    /// <summary>How likely a tie-up is no fault of the hydraulics. Judgement, no source.</summary>
    private const double MechanicalShare = 0.1;

    /// <summary>The gears that were told to tie up.</summary>
    private static ImmutableArray<int> Bound(DiagnosisReport report) =>
    [
        .. report.Evidence.OfType<Evidence.Felt>().Where(felt => !felt.IsHealthy).SelectMany(felt => felt.In)
            .Where(felt => felt.Fits.Any(fit => fit is { Kind: FeelKind.TieUp, Degree: >= 1 })).Select(felt => felt.Gear).Distinct(),
    ];

    /// <summary>The mechanical lock that looks like what was told; null where nothing binds.</summary>
    /// <param name="report">The diagnosis.</param>
    /// <param name="candidates">What else it may be.</param>
    public static Candidate? Lock(DiagnosisReport report, ImmutableArray<Candidate> candidates)
    {
        if (candidates.IsEmpty || Bound(report).IsEmpty) return null;
        var best = candidates.Max(candidate => candidate.Score);
        var sum = candidates.Sum(candidate => Math.Exp(candidate.Score - best));
        return new Candidate([], report.Sound, [], best + Math.Log(sum * MechanicalShare / (1 - MechanicalShare))) { Mechanical = "a mechanical lock" };
    }

    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates) => Bound(report).Select(gear => new ProposedTest(
        TestKind.Roll, Phrase.Of($"engine off, lever still in {unit.Gears[gear].Name}: push the vehicle"),
        [.. candidates.Select(candidate => candidate.Mechanical is null ? Phrase.Of($"it rolls both ways") : Phrase.Of($"it rolls one way, or not at all"))]));
}
