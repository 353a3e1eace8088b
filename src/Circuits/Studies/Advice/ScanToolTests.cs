using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>
/// A scan tool that works one solenoid against what the gear commands, in the gears that were complained of; the vehicle on stands. What is
/// looked at is what the wheels do.
/// </summary>
internal sealed class ScanToolTests(EffectSolver solver, DiagnosisReport report) : ITestSource
{
    /// <summary>Of more candidates or gears, those beyond are not worth their time.</summary>
    private const int MostCandidates = 60;

    private const int MostGears = 2;

    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates)
    {
        if (candidates.Count > MostCandidates) yield break;
        var solenoids = solver.Assembly.Revisions.Zip(solver.Unit.Parts)
            .SelectMany(pair => pair.First.Solenoids.Select(solenoid => (Part: pair.Second.Name, Solenoid: solenoid))).ToList();
        if (solenoids.Count == 0) yield break;
        var gears = report.Evidence.OfType<Evidence.Felt>().Where(felt => !felt.IsHealthy).SelectMany(felt => felt.Gears).Distinct().Take(MostGears);
        foreach (var gear in gears)
        {
            var tried = solenoids.Select(pair => Switched(solver.Unit.Gears[gear], $"{pair.Part}.{pair.Solenoid.Name}", pair.Solenoid)).ToList();
            var effects = solver.SolveAs([.. candidates.Select(candidate => candidate.Faults)], gear, [.. tried.Select(item => item.Gear)]);
            for (var i = 0; i < tried.Count; i++)
            {
                var results = effects.Select(effect => effect[i]).ToList();
                if (results.Any(effect => effect.Kind is FeelKind.TieUp)) continue;
                yield return new ProposedTest(
                    TestKind.ScanTool, Phrase.Of($"scan tool in {solver.Unit.Gears[gear].Name}, wheels off the ground: {tried[i].Text}; what do they do"), [.. results.Select((effect, n) => candidates[n].Mechanical is null ? OutputOf(effect) : Phrase.Of($"they stand"))]);
            }
        }
    }

    private static Phrase OutputOf(GearEffect effect) => effect.Kind switch
    {
        FeelKind.NoDrive => Phrase.Of($"they stand"),
        FeelKind.WrongGear => Phrase.Of($"they turn as in {effect.Instead}"),
        FeelKind.WrongDirection => Phrase.Of($"they turn the other way"),
        FeelKind.WrongRatio => Phrase.Of($"they turn in another ratio"),
        FeelKind.Slips => Phrase.Of($"they lag behind"),
        FeelKind.NeverSettles => Phrase.Of($"they come and go"),
        _ => Phrase.Of($"they turn as they should"),
    };

    /// <summary>The gear with one solenoid worked the other way: off where it is on, fully on where it is off.</summary>
    private static (GearState Gear, Phrase Text) Switched(GearState gear, string name, Solenoid solenoid)
    {
        var isOn = gear.Energize.Any(use => use.Name == name || use.Name == solenoid.Name)
            || gear.Commands.Any(command => (command.Solenoid.Name == name || command.Solenoid.Name == solenoid.Name) && IsOn(command));
        var without = gear with
        {
            Energize = gear.Energize.RemoveAll(use => use.Name == name || use.Name == solenoid.Name),
            Commands = gear.Commands.RemoveAll(command => command.Solenoid.Name == name || command.Solenoid.Name == solenoid.Name),
        };
        return isOn
            ? (without, Phrase.Of($"switch {name} off"))
            : (without with { Energize = without.Energize.Add(new NameUse(name, solenoid.Place)) }, Phrase.Of($"switch {name} fully on"));
    }

    private static bool IsOn(Command command) => command.Pressure is { Kilopascals: > 0 } || command.Current is { Amperes: > 0 };
}
