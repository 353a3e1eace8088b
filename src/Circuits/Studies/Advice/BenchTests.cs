using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Advice;

/// <summary>A look at what a candidate is about, a pin in its hole: what tells whether the fault is there.</summary>
internal sealed class BenchTests : ITestSource
{
    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates)
    {
        foreach (var target in candidates.SelectMany(candidate => candidate.Faults).Select(TargetOf).Distinct())
        {
            yield return new ProposedTest(target.Kind, target.Text, [.. candidates.Select(candidate => Found(candidate, target))]);
        }
    }

    private static readonly Phrase AsItShould = Phrase.Of($"as it should be");

    private static Phrase Found(Candidate candidate, (TestKind, Phrase) target) =>
        candidate.Faults.FirstOrDefault(fault => TargetOf(fault) == target)?.Name ?? AsItShould;

    /// <summary>How a fault is found: faults of one thing are found by one look.</summary>
    private static (TestKind Kind, Phrase Text) TargetOf(Fault fault)
    {
        var element = fault.Element.Split('=', ':')[0];
        return fault.Kind switch
        {
            FaultKind.WrongRevision => (TestKind.Look, Phrase.Of($"look which revision {element} is")),
            FaultKind.BallLeftOut or FaultKind.BallWrongSize => (TestKind.Look, Phrase.Of($"look for ball {element} and measure it")),
            FaultKind.BallMisplaced => (TestKind.Look, Phrase.Of($"look for a ball in {element.Split('@')[0]}")),
            FaultKind.HolePlugged or FaultKind.HoleWorn => (TestKind.Pin, Phrase.Of($"pin the hole {fault.Element}")),
            FaultKind.PassagesLeak => (TestKind.Look, Phrase.Of($"look at the wall between {element.Replace("~", " and ", StringComparison.Ordinal)}")),
            FaultKind.SealLeaking => (TestKind.Look, Phrase.Of($"look at the seal of clutch {fault.Element.Replace(":release", ", release side", StringComparison.Ordinal)}")),
            FaultKind.SolenoidStuckLow or FaultKind.SolenoidStuckHigh or FaultKind.SolenoidReversed => (TestKind.Look, Phrase.Of($"solenoid {element} on the tester")),
            FaultKind.SheetsSwapped => (TestKind.Look, Phrase.Of($"look in which order the sheets lie in joint {element}")),
            _ => (TestKind.Look, Phrase.Of($"push {element} by hand, look at its spring and its drain")),
        };
    }
}
