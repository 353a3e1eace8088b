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
/// <param name="Came">The verdict that it came to: of its gear, or the worst.</param>
/// <param name="Missed">What does not hold; empty when all does.</param>
public sealed record CheckedExpectation(Expectation Expectation, Assembly Assembly, Verdict Came, ImmutableArray<Finding> Missed);

/// <summary>Checks a unit against its own chart and its own expectations.</summary>
public static class UnitCheck
{
    /// <summary>Judges every matched set in every gear, and every expectation.</summary>
    /// <param name="judge">The unit's judge.</param>
    public static CheckReport Run(UnitJudge judge)
    {
        var unit = judge.Unit;
        var matched = unit.Matched.Select(set => judge.Report(Assembly.Of(unit, set))).ToImmutableArray();
        List<Finding> findings = [.. judge.GearsetFaults, .. FaultLibrary.Unknown(unit)];
        foreach (var report in matched) findings.AddRange(report.Findings);
        var expectations = Expected(judge, matched);
        var missed = new List<Finding>();
        foreach (var expectation in expectations) missed.AddRange(expectation.Missed);
        findings.AddRange(missed.Count > 1 ? missed.OrderBy(finding => finding.Place) : missed);

        // One finding that holds for several assemblies or gears alike is told once, for the first.
        var told = new HashSet<(string Rule, Place Place, Phrase Message)>();
        findings.RemoveAll(finding => !told.Add((finding.Rule, finding.Place, finding.Message)));
        return new CheckReport(matched, [.. findings], expectations.FindAll(expectation => expectation.Missed.IsEmpty).Count, expectations.Count)
        {
            Expectations = [.. expectations],
        };
    }

    /// <summary>The expectations, in the order of the file.</summary>
    private static List<CheckedExpectation> Expected(UnitJudge judge, ImmutableArray<AssemblyReport> matched)
    {
        // Several expectations often speak of one assembly: it is judged once, and no further than they ask.
        var groups = new OrderedDictionary<string, (Assembly Assembly, List<Expectation> Expectations)>();
        foreach (var expectation in judge.Unit.Expectations)
        {
            var assembly = AssemblyOf(judge.Unit, expectation);
            var key = string.Join('\n', assembly.Revisions.Select(revision => revision.Name).ToArray());
            if (groups.TryGetValue(key, out var known)) known.Expectations.Add(expectation);
            else groups.Add(key, (assembly, [expectation]));
        }

        var expectations = new List<CheckedExpectation>();
        for (var i = 0; i < groups.Count; i++)
        {
            var (assembly, asked) = groups.GetAt(i).Value;
            var outcome = OutcomeOf(judge, assembly, asked, matched);
            foreach (var expectation in asked) expectations.Add(new CheckedExpectation(expectation, outcome.Assembly, outcome.VerdictIn(expectation.Gear?.Name), [.. Missed(outcome, expectation)]));
        }

        expectations.Sort((one, other) => one.Expectation.Place.CompareTo(other.Expectation.Place));
        return expectations;
    }

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
        var any = expectations.Exists(expectation => expectation.Gear is null);
        var asked = new List<int>();
        for (var gear = 0; gear < all.Length; gear++)
        {
            var name = all[gear].Name;
            if (any || expectations.Exists(expectation => expectation.Gear?.Name == name)) asked.Add(gear);
        }

        var verdicts = new Dictionary<string, Verdict>();
        foreach (var verdict in judge.Verdicts(assembly, asked)) verdicts.Add(all[asked[verdicts.Count]].Name, verdict);
        return new Outcome(assembly, verdicts, []);
    }

    private static IEnumerable<Finding> Missed(Outcome report, Expectation expectation)
    {
        var verdict = report.VerdictIn(expectation.Gear?.Name);
        var where = expectation.Gear is { } named ? Phrase.Of($" in {named.Name}") : Phrase.Empty;
        var because = expectation.Because is null ? Phrase.Empty : Phrase.Of($" (expected because: {expectation.Because})");
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
        return Assembly.Of(unit, [.. unit.Parts.Select((part, index) =>
        {
            var chosen = expectation.Assembly.FirstOrDefault(pair => pair.Key == part.Name).Value;
            return chosen is null ? start.Revisions[index] : part.FindRevision(chosen)!;
        })]);
    }
}
