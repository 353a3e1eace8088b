using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Rules;
using Circuits.Model;
using Circuits.Studies.Faults;

namespace Circuits.Studies;

/// <summary>What checking a unit came to.</summary>
/// <param name="Matched">A report of every matched set.</param>
/// <param name="Findings">Findings of the matched sets and of the expectations, doubles dropped.</param>
/// <param name="ExpectationsHeld">How many of the file's expectations hold.</param>
/// <param name="ExpectationsTotal">How many it has.</param>
public sealed record CheckReport(
    ImmutableArray<AssemblyReport> Matched, ImmutableArray<Finding> Findings, int ExpectationsHeld, int ExpectationsTotal)
{
    /// <summary>Every expectation, in the order of the file.</summary>
    public ImmutableArray<CheckedExpectation> Expectations { get; init; } = [];
}

/// <summary>One of the file's expectations, and what it came to.</summary>
/// <param name="Expectation">The expectation.</param>
/// <param name="Assembly">The assembly that it speaks of.</param>
/// <param name="Missed">What does not hold; empty when all does.</param>
public sealed record CheckedExpectation(Expectation Expectation, Assembly Assembly, ImmutableArray<Finding> Missed);

/// <summary>Checks a unit against its own chart and its own expectations.</summary>
public static class UnitCheck
{
    /// <summary>Judges every matched set in every gear, and every expectation.</summary>
    /// <param name="judge">The unit's judge.</param>
    public static CheckReport Run(UnitJudge judge)
    {
        var unit = judge.Unit;
        var matched = unit.Matched.Select(set => judge.Report(Assembly.Of(unit, set))).ToImmutableArray();
        var findings = new List<Finding>(judge.GearsetFaults);
        findings.AddRange(FaultLibrary.Unknown(unit));
        findings.AddRange(matched.SelectMany(report => report.Findings));
        var byAssembly = unit.Expectations.Select(expectation => (Expectation: expectation, Assembly: AssemblyOf(unit, expectation)))
            .GroupBy(pair => string.Join('\n', pair.Assembly.Choice.Select(choice => choice.Value)));
        var expectations = new List<CheckedExpectation>();
        foreach (var group in byAssembly)
        {
            // Several expectations often speak of one assembly: it is judged once, and no further than they ask.
            var outcome = OutcomeOf(judge, group.First().Assembly, [.. group.Select(pair => pair.Expectation)], matched);
            expectations.AddRange(group.Select(pair => new CheckedExpectation(pair.Expectation, outcome.Assembly, [.. Missed(outcome, pair.Expectation)])));
        }

        expectations.Sort((one, other) => one.Expectation.Place.CompareTo(other.Expectation.Place));
        findings.AddRange(expectations.SelectMany(expectation => expectation.Missed).OrderBy(finding => finding.Place));
        var held = expectations.Count(expectation => expectation.Missed.IsEmpty);
        return new CheckReport(matched, [.. DropDoubles(findings)], held, expectations.Count)
        {
            Expectations = [.. expectations],
        };
    }

    /// <summary>One finding that holds for several assemblies or gears alike is told once, for the first.</summary>
    private static IEnumerable<Finding> DropDoubles(IEnumerable<Finding> findings) =>
        findings.DistinctBy(finding => (finding.Rule, finding.Place, finding.Message));

    /// <summary>What came of an assembly, as far as expectations ask.</summary>
    /// <param name="Assembly">The assembly.</param>
    /// <param name="Verdicts">Verdicts of gears, by name; of those that are asked for.</param>
    /// <param name="Findings">What was found; empty when nothing is asked for.</param>
    private sealed record Outcome(Assembly Assembly, Dictionary<string, Verdict> Verdicts, ImmutableArray<Finding> Findings)
    {
        /// <summary>A gear's verdict, or, without a gear, the worst.</summary>
        public Verdict VerdictIn(string? gear) => gear is null ? Verdicts.Values.DefaultIfEmpty(Verdict.AsCharted).Max() : Verdicts[gear];
    }

    private static Outcome OutcomeOf(UnitJudge judge, Assembly assembly, List<Expectation> expectations, ImmutableArray<AssemblyReport> matched)
    {
        var report = matched.FirstOrDefault(known => known.Assembly.Matched is { } name && name == assembly.Matched);
        if (report is null && expectations.Exists(expectation => !expectation.Finds.IsEmpty)) report = judge.Report(assembly);
        if (report is not null)
            return new Outcome(report.Assembly, report.Gears.ToDictionary(gear => gear.Gear, gear => gear.Verdict), report.Findings);
        var all = judge.Unit.Gears;
        var asked = expectations.Exists(expectation => expectation.Gear is null)
            ? [.. Enumerable.Range(0, all.Length)]
            : expectations.Select(expectation => all.IndexOf(judge.Unit.FindGear(expectation.Gear!.Value.Name)!)).Distinct().ToList();
        var verdicts = new Dictionary<string, Verdict>();
        foreach (var verdict in judge.Verdicts(assembly, asked)) verdicts.Add(all[asked[verdicts.Count]].Name, verdict);
        return new Outcome(assembly, verdicts, []);
    }

    private static IEnumerable<Finding> Missed(Outcome report, Expectation expectation)
    {
        var verdict = report.VerdictIn(expectation.Gear?.Name);
        var where = expectation.Gear is { } named ? $" in {named.Name}" : "";
        var because = expectation.Because is null ? "" : $" (expected because: {expectation.Because})";
        if (verdict != expectation.Verdict)
        {
            yield return ExpectationNotMet.Rule.At(
                expectation.Place, $"expected {VerdictText.Of(expectation.Verdict)}{where}, is {VerdictText.Of(verdict)}{because}") with
            {
                Gear = expectation.Gear?.Name,
                Assembly = report.Assembly.Choice,
            };
        }

        foreach (var rule in expectation.Finds)
        {
            if (report.Findings.Any(finding => finding.Rule == rule.Name && (expectation.Gear is null || finding.Gear is null || finding.Gear == expectation.Gear?.Name)))
                continue;
            yield return ExpectationNotMet.Rule.At(rule.Place, $"expected a finding {rule.Name}{where}, there is none{because}") with
            {
                Gear = expectation.Gear?.Name,
                Assembly = report.Assembly.Choice,
            };
        }
    }

    private static Assembly AssemblyOf(Unit unit, Expectation expectation)
    {
        var start = expectation.Matched is { } name
            ? Assembly.Of(unit, unit.Matched.First(set => set.Name == name))
            : Assembly.DefaultOf(unit);
        var revisions = unit.Parts.Zip(start.Revisions, (part, revision) =>
        {
            var chosen = expectation.Assembly.FirstOrDefault(pair => pair.Key == part.Name).Value;
            return chosen is null ? revision : part.FindRevision(chosen)!;
        });
        return Assembly.Of(unit, [.. revisions]);
    }
}
