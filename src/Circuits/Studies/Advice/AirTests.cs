using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>Air wherever it can be let in and was not yet, the lever in neutral: what each candidate lets move and hiss.</summary>
internal sealed class AirTests(Assembly assembly, ImmutableArray<Evidence> evidence) : ITestSource
{
    /// <summary>Of more candidates the outcomes are not worth their time.</summary>
    private const int MostCandidates = 60;

    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates)
    {
        if (candidates.Count > MostCandidates) yield break;
        var told = evidence.OfType<AirEvidence>().ToList();
        var neutral = AirBench.NeutralOf(assembly.Unit);
        var predictions = told.Find(item => item.Predictions.Lever == neutral)?.Predictions ?? new AirPredictions(assembly);
        var outcomes = candidates.Select(candidate => predictions.Everywhere(candidate.Faults)).ToList();
        for (var i = 0; i < predictions.Ports.Length; i++)
        {
            var port = predictions.Ports[i];
            if (told.Exists(item => item.Predictions == predictions && item.Port == i)) continue;
            var isOpen = port.Kind == AirPortKind.Face;
            yield return new ProposedTest(
                isOpen ? TestKind.AirOpen : TestKind.Air, Phrase.Of($"air at {AirWords.Of(port)}{(isOpen ? Phrase.Of($", joint {port.Joint} open") : null)}"),
                [.. outcomes.Select(found => AirWords.Between(predictions.Right[i], found[i]))]);
        }
    }
}
