using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>
/// A drive in a gear of which nothing was told. Never where any candidate lets expect a lock or the wrong direction: nobody drives to see
/// what happens (common practice, no source).
/// </summary>
internal sealed class DriveTests(Unit unit, DiagnosisReport report) : ITestSource
{
    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates)
    {
        var told = report.Evidence.OfType<Evidence.Felt>().SelectMany(felt => felt.Gears).ToHashSet();
        foreach (var gear in report.Driven.Where(gear => !told.Contains(gear)))
        {
            if (candidates.Any(candidate => candidate.Effects[gear].Kind is FeelKind.TieUp or FeelKind.WrongDirection or FeelKind.NeverSettles)) continue;
            yield return new ProposedTest(
                TestKind.Drive, Phrase.Of($"drive in {unit.Gears[gear].Name}"),
                [.. candidates.Select(candidate => Complaints.Of(candidate.Effects[gear], unit.Gears[gear].Name) ?? Phrase.Of($"as it should be"))]);
        }
    }
}
