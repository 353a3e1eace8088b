using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;
using Circuits.Studies.Changes;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>Diagnoses of the teaching unit, held to plain enumeration; and what evidence that makes no sense gets.</summary>
public class DiagnosisTests
{
    // Pairs are pruned by what their faults do alone, which holds of the static answer.
    private static readonly UnitJudge Judge = new DemoUnit("rill/rill.yaml", JudgeMode.Quick).Judge;
    private static readonly AirReader Air = new(Assembly.DefaultOf(Judge.Unit));
    private static readonly EffectSolver Solver = new(Judge, Assembly.DefaultOf(Judge.Unit));
    private static readonly DiagnosisOptions Whole = new() { MostPairs = int.MaxValue, MostWhole = int.MaxValue };

    private static ImmutableArray<Evidence> Told(params ReadOnlySpan<string> items)
    {
        var reader = new EvidenceReader(Judge);
        var told = ImmutableArray.CreateBuilder<Evidence>();
        foreach (var item in items)
        {
            if (item.StartsWith("air ", StringComparison.Ordinal))
            {
                told.AddRange(Air.Read(item["air ".Length..]).Select(air => air.Evidence ?? throw new InvalidOperationException(air.Problem)));
                continue;
            }

            var read = item.Contains('=', StringComparison.Ordinal) ? reader.Reading(item)
                : item.StartsWith("right ", StringComparison.Ordinal) ? reader.Healthy(item["right ".Length..]) : reader.Complaint(item);
            told.Add(read.Evidence ?? throw new InvalidOperationException(read.Problem));
        }

        return told.ToImmutable();
    }

    private static DiagnosisReport Ask(params ReadOnlySpan<string> items) => DiagnosisStudy.Run(Solver, Told(items), Whole, TestContext.Current.CancellationToken);

    private static string[] Codes(DiagnosisReport report) =>
        [.. report.Explaining.SelectMany(known => known.Members).Select(member => string.Join(" + ", member.Faults.Select(fault => fault.Code))).Order(StringComparer.Ordinal)];

    // Plain set logic: a full report on every assembly with one fault and with two, each a set of facts; a candidate is consistent when everything
    // told is among its facts, and a pair counts when neither of its faults is consistent alone. Nothing is shared, reused, screened or weighed.
    private static readonly Lazy<ImmutableArray<(string Code, ImmutableArray<string> Parts, HashSet<string> Facts)>> Enumerated = new(() =>
    {
        var sound = Assembly.DefaultOf(Judge.Unit);
        var faults = FaultLibrary.Of(sound);
        var all = ImmutableArray.CreateBuilder<(string, ImmutableArray<string>, HashSet<string>)>();
        foreach (var fault in faults) all.Add((fault.Code, [fault.Code], Facts(fault.In(sound))));
        for (var i = 0; i < faults.Length; i++)
        {
            for (var j = i + 1; j < faults.Length; j++)
            {
                if (!faults[i].GoesWith(faults[j])) continue;
                all.Add(($"{faults[i].Code} + {faults[j].Code}", [faults[i].Code, faults[j].Code], Facts(ChangedAssembly.Of(sound, [.. faults[i].Changes, .. faults[j].Changes]))));
            }
        }

        return all.ToImmutable();
    });

    private static readonly (string Tap, string Passage)[] Taps = [("line", "body.line"), ("forward", "housing.forward"), ("high", "housing.high")];

    /// <summary>The readings that the cases below tell, so that facts can be about them.</summary>
    private static readonly (string Text, int Tap, string Gear, double Kilopascals)[] Readings =
    [
        ("high@R=0kPa", 2, "R", 0), ("high@R=55kPa", 2, "R", 55), ("forward@1=0kPa", 1, "1", 0), ("line@1=550kPa", 0, "1", 550), ("line@R=200kPa", 0, "R", 200),
        ("high@2=550kPa", 2, "2", 550), ("forward@1=80kPa", 1, "1", 80), ("high@R=786kPa", 2, "R", 786),
    ];

    private static HashSet<string> Facts(Assembly assembly)
    {
        var facts = new HashSet<string>();
        foreach (var gear in Judge.Report(assembly).Gears)
        {
            var feels = gear.Drive!.Feel.Words();
            var name = gear.Gear;
            if (Any(feels, "as it should", "harsh into", "delayed or soft", "lets go too", "no engine braking", "drag", "on as well")) facts.Add($"right {name}");
            if (Any(feels, "no drive", "no reverse", "slips in", "wrong gear", "wrong ratio", "wrong direction")) facts.Add($"no {name}");
            if (Any(feels, "no drive", "no reverse", "slips in")) facts.Add($"no drive in {name}");
            if (Any(feels, "no drive", "no reverse", "slips in", "delayed or soft")) facts.Add($"slips in {name}");
            if (Any(feels, "tie-up", "lets go too slowly", "on as well")) facts.Add($"tie-up in {name}");
            if (Any(feels, "harsh into", "lets go too fast", "tie-up")) facts.Add($"harsh into {name}");
            foreach (var (text, tap, where, kilopascals) in Readings)
            {
                var read = gear.Pressures.FirstOrDefault(pressure => pressure.Passage == Taps[tap].Passage)?.Kilopascals ?? 0;
                if (where == name && Math.Abs(read - kilopascals) <= Math.Max(30, 0.1 * Math.Max(read, kilopascals))) facts.Add(text);
            }
        }

        facts.UnionWith(AirFacts(assembly));
        return facts;

        static bool Any(string text, params ReadOnlySpan<string> pieces)
        {
            foreach (var piece in pieces)
            {
                if (text.Contains(piece, StringComparison.Ordinal)) return true;
            }

            return false;
        }
    }

    // The bench by plain means: no pump, the lever in N, the tap's passage held at a little pressure, the whole network solved anew. A clutch with
    // 60 % of it moves, with 20 % it may.
    private static IEnumerable<string> AirFacts(Assembly assembly)
    {
        foreach (var tap in Judge.Unit.Taps)
        {
            var unit = assembly.Unit with
            {
                Pump = null,
                Matched = [],
                Gears = [new GearState("bench", [], tap.At.Place) { Lever = new NameUse("N", tap.At.Place), Signals = [new FixedPressure(tap.At, new Pressure(1))] }],
            };
            var network = NetworkBuilder.Build(Assembly.Of(unit, assembly.Revisions));
            var solution = SolvedAssembly.Of(Plan.Of(network)).Gears[0].Solution;
            foreach (var clutch in (string[])["forward", "high", "reverse-brake"])
            {
                var node = network.Nodes.FirstOrDefault(known => known.Name == $"housing.{clutch}")?.Index ?? -1;
                var share = node < 0 ? 0 : solution.PressureAt(node);
                if (share >= 0.2) yield return $"air {tap.Name}={clutch} moves";
                if (share < 0.6) yield return $"air {tap.Name}={clutch} does not move";
            }
        }
    }

    [Theory]
    [InlineData("no R", "right 1", "right 2", "air high=reverse-brake does not move")]
    [InlineData("no R", "air high=reverse-brake moves")]
    [InlineData("air high=forward moves", "right 1")]
    [InlineData("air forward=forward moves", "air forward=high moves", "no R")]
    [InlineData("slips in 1", "air forward=forward moves", "air line=forward does not move")]
    [InlineData("no R", "right 1", "right 2")]
    [InlineData("no R", "right 1", "right 2", "high@R=0kPa")]
    [InlineData("no R", "right 1", "right 2", "high@R=55kPa")]
    [InlineData("no R", "no drive in 1", "high@R=0kPa", "forward@1=0kPa", "line@1=550kPa")]
    [InlineData("slips in 1", "right R")]
    [InlineData("slips in 1", "slips in 2", "no R", "forward@1=80kPa")]
    [InlineData("tie-up in R", "right 1")]
    [InlineData("harsh into 2", "right R")]
    [InlineData("no 2", "no R")]
    [InlineData("no drive in 1", "harsh into R")]
    [InlineData("line@R=200kPa")]
    [InlineData("no R", "high@2=550kPa", "high@R=786kPa")]
    public void Plain_enumeration_finds_the_same_singles_and_pairs(params string[] told)
    {
        var consistent = Enumerated.Value.Where(candidate => told.All(candidate.Facts.Contains)).ToList();
        var alone = consistent.Where(candidate => candidate.Parts.Length == 1).Select(candidate => candidate.Code).ToHashSet();
        var expected = consistent.Where(candidate => candidate.Parts.Length == 1 || !candidate.Parts.Any(alone.Contains)).Select(candidate => candidate.Code).Order(StringComparer.Ordinal);
        var report = Ask(told);
        Assert.Equal(expected, Codes(report));
        Assert.True(report.PairsComplete);
    }

    // Injected one by one, told in words and read at every tap in every gear: the fault, or what looks just like it, comes first.
    [Fact]
    public void Every_single_fault_that_shows_comes_first()
    {
        var singles = Solver.Singles(1, TestContext.Current.CancellationToken);
        var shown = 0;
        for (var i = 0; i < Solver.Faults.Length; i++)
        {
            var told = ClosedLoop.Told(Solver, singles[i]);
            if (told.All(item => item.Degree([], Solver.Sound) > 0)) continue;
            shown++;
            var report = DiagnosisStudy.Run(Solver, told, new DiagnosisOptions { Pairs = false }, TestContext.Current.CancellationToken);
            Assert.Contains(report.Explaining[0].Members, member => member.Faults[0].Code == Solver.Faults[i].Code);
        }

        Assert.True(shown > 25, $"{shown} of {singles.Length} faults show");
    }

    [Fact]
    public void The_answer_does_not_depend_on_threads_nor_on_what_is_remembered()
    {
        var told = Told("no R", "right 1");
        var one = DiagnosisStudy.Run(new EffectSolver(Judge, Solver.Assembly), told, Whole, TestContext.Current.CancellationToken);
        var two = DiagnosisStudy.Run(new EffectSolver(Judge, Solver.Assembly), told, Whole with { Threads = 3 }, TestContext.Current.CancellationToken);
        var anew = DiagnosisStudy.Run(new EffectSolver(Judge, Solver.Assembly) { Forgets = true }, told, Whole, TestContext.Current.CancellationToken);
        var codes = one.Explaining.Select(known => string.Join(" ", known.Members.Select(member => member.Name))).ToList();
        Assert.NotEmpty(codes);
        Assert.Equal(codes, two.Explaining.Select(known => string.Join(" ", known.Members.Select(member => member.Name))));
        Assert.Equal(codes, anew.Explaining.Select(known => string.Join(" ", known.Members.Select(member => member.Name))));
    }

    [Fact]
    public void What_contradicts_itself_gets_no_diagnosis()
    {
        var report = Ask("no R", "right R", "high@2=310kPa", "high@2=20kPa");
        Assert.Equal(2, report.Contradictions.Length);
        Assert.Empty(report.Explaining);
        Assert.Equal(["contradictory-evidence", "contradictory-evidence"], DiagnosisFindings.Of(report).Select(finding => finding.Rule));
        Assert.Empty(Ask("high@2=310kPa", "high@2=300kPa").Contradictions);
    }

    [Fact]
    public void What_nothing_explains_is_said_to_be_unexplained_and_what_is_right_needs_no_fault()
    {
        var report = Ask("tie-up in 1", "harsh into 2", "line@1=1500kPa", "line@2=100kPa");
        Assert.Empty(report.Explaining);
        Assert.NotEmpty(report.Near);
        // Line pressure is never twice the spring's: no single fault does that, whatever is told besides.
        Assert.Equal(["line@1=1500kPa"], report.Conflict.Select(item => item.Text));
        Assert.All(report.Near, near => Assert.NotEmpty(CandidateWords.Contradicts(near.First, report)));
        Assert.Equal(["unexplained"], DiagnosisFindings.Of(report).Select(finding => finding.Rule));
        Assert.True(Ask("right 1", "line@1=550kPa").SoundExplains);
        Assert.Empty(DiagnosisFindings.Of(Ask("right 1")));
    }

    // By hand: each candidate contradicts what is 0 of it, and the set has to meet every one of them.
    [Theory]
    [InlineData("0 1 2", "1011", "1101", "0111")]
    [InlineData("1", "1001", "0011", "1011")]
    [InlineData("0 2", "0111", "1101", "0110")]
    [InlineData("", "1111", "0000")]
    public void The_smallest_set_that_nothing_explains_together_is_found(string expected, params string[] fits)
    {
        ImmutableArray<Evidence> told = [.. Enumerable.Range(0, fits[0].Length).Select(i => new Evidence.PartIs($"{i}", Phrase.Empty, "", [], ""))];
        var found = Conflict.Of(told, fits.Select(row => row.Select(c => c == '1' ? 1.0 : 0).ToImmutableArray()));
        Assert.Equal(expected, string.Join(' ', found.Select(item => item.Text)));
    }

    [Fact]
    public void A_candidate_tells_what_it_lets_expect_besides()
    {
        var report = Ask("no drive in 1", "forward@1=0kPa");
        var plugged = report.Explaining.SelectMany(known => known.Members).Single(member => member.Faults is [{ Code: "hole-plugged plate@3" }]);
        Assert.Equal(["no drive in 2"], CandidateWords.Expects(plugged, report).Select(words => words.Words()));
        Assert.Equal(["no drive in 1", "forward@1=0kPa"], CandidateWords.Explains(plugged, report));
        Assert.Equal(0, plugged.FromReadings(report.Evidence));
    }

    [Fact]
    public void What_was_checked_and_what_was_found_of_a_part_rule_faults_out()
    {
        var faults = Solver.Faults;
        var told = Told("no R", "right 1", "right 2").Add(EvidenceReader.Cleared("plate@11", faults).Evidence!);
        Assert.DoesNotContain("hole-plugged plate@11", Codes(DiagnosisStudy.Run(Solver, told, Whole, TestContext.Current.CancellationToken)));
        told = Told("no R", "right 1", "right 2").Add(new Evidence.PartIs("slot", Phrase.Of($"plate has a slot"), "plate", ["2"], "1"));
        var report = DiagnosisStudy.Run(Solver, told, Whole, TestContext.Current.CancellationToken);
        Assert.Equal(["wrong-revision plate=2"], Codes(report));
        Assert.NotNull(EvidenceReader.Cleared("plate@99", faults).Problem);
    }

    // A unit without gear train, pump speeds, taps and coordinates: clutches alone say what is wrong.
    [Fact]
    public void A_bare_unit_is_diagnosed_by_its_clutches()
    {
        var bare = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body: {kind: casting, passages: {line: {face: 1}}, regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}}
              plate: {kind: sheet, openings: [{at: 1}]}
              cover: {kind: casting, passages: {"Ø ↯": {face: 1}}}
            clutches: {only: {at: cover.Ø↯}}
            gears: {D: {apply: [only]}}
            """.Replace("\"Ø ↯\"", "Ø↯", StringComparison.Ordinal));
        var solver = new EffectSolver(bare.Judge, bare.Assembly());
        var told = new EvidenceReader(bare.Judge).Complaint("no D").Evidence!;
        var report = DiagnosisStudy.Run(solver, [told], new DiagnosisOptions(), TestContext.Current.CancellationToken);
        Assert.Equal(["hole-plugged plate@1", "regulator-stuck-open body.main", "spring-missing body.main"], Codes(report).Where(code => !code.Contains('+', StringComparison.Ordinal)));
    }

    // Two holes feed one chamber: plugged one by one nothing is felt, plugged together nothing drives.
    [Theory]
    [InlineData(100, true)]
    [InlineData(0, false)]
    public void Of_many_pairs_those_that_touch_a_common_passage_are_tried(int most, bool found)
    {
        var two = CircuitCase.Of("""
            joints: {face: {between: [body, cover], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body: {kind: casting, passages: {line: {face: [1, 2]}}, regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}}
              plate: {kind: sheet, openings: [{at: 1}, {at: 2}]}
              cover: {kind: casting, passages: {feed: {face: [1, 2]}}}
            clutches: {only: {at: cover.feed}}
            gears: {D: {apply: [only]}}
            """);
        var solver = new EffectSolver(two.Judge, two.Assembly());
        var told = new EvidenceReader(two.Judge).Complaint("no D").Evidence!;
        var report = DiagnosisStudy.Run(solver, [told], new DiagnosisOptions { MostWhole = 0, MostMeeting = most }, TestContext.Current.CancellationToken);
        Assert.Equal(found, Codes(report).Contains("hole-plugged plate@1 + hole-plugged plate@2"));
        Assert.False(report.PairsComplete);
    }
}
