using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// The reach of oil, derived a second time by something that shares no line with the library: an answer-set program
/// (<c>reach.lp</c> with its parts <c>joints.lp</c> and <c>crossfeeds.lp</c>), run by clingo, on every assembly and gear of
/// every demo unit, and compared fact by fact. The program is given the model of the file (<see cref="ClingoFacts"/>), never
/// the library's network; what it takes over besides, where it needs numbers that are not whole or a history, is said at
/// its head and handed over by <see cref="ClingoClaims"/>.
/// <see cref="ClingoBatch"/> compares:
/// <list type="bullet">
/// <item>for each passage: supply, exhaust, between, trapped; and that it is level with the one source that reaches it;</item>
/// <item>that valves, balls and regulators stand where these pressures put them, and that something does not where the
/// library says that a state never settles;</item>
/// <item>the cross-feeds, with the opening they come through; the nearest matched sets; and what is found about balls.</item>
/// </list>
/// A new demo unit is taken up by itself: every <c>circuits/*/*.yaml</c>. A new kind of element needs its facts in
/// ClingoFacts and its rules in the program, written from the design and not from the library's code. When the two disagree,
/// the message names assembly, gear and passage; either may be wrong. To look into one state by hand, write the batch's
/// <see cref="ClingoBatch.Facts"/> to a file, run <c>clingo joints.lp reach.lp crossfeeds.lp facts</c> and add <c>#show</c> lines.
/// </summary>
public class ClingoReach(ITestOutputHelper output)
{
    /// <summary>Assemblies that one run of clingo takes, besides the matched sets. Beyond a hundred or so its grounder slows down.</summary>
    private const int BatchSize = 48;

    private const int MostShown = 20;

    private static readonly string Demos = Path.Combine(Repository.Root, "circuits");

    private static readonly string Corners = Path.Combine(Repository.Root, "tests", "Circuits.Tests", "Outside", "corners.yaml");

    /// <summary>Every demo unit; files of single parts lie one folder deeper.</summary>
    public static TheoryData<string> Units =>
        [.. Directory.EnumerateDirectories(Demos).SelectMany(folder => Directory.EnumerateFiles(folder, "*.yaml"))
            .Select(file => Path.GetRelativePath(Demos, file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Units))]
    public void Oil_reaches_what_an_independent_program_says(string file) => Compare(Path.Combine(Demos, file));

    [Fact]
    public void So_it_does_in_a_unit_of_odd_corners() => Compare(Corners);

    /// <summary>The comparison itself must be able to fail: each lie about one state of the library's answers is found out.</summary>
    [Theory]
    [InlineData("oil", "body.either: library exhaust, program supply")]
    [InlineData("pressure", "body.either has 1 kPa, its one source body.line")]
    [InlineData("ball", "by their own pressures these stand wrong: body.two-way")]
    [InlineData("cross-feed", "cross-feed body.line into housing.high through plate@13: library only")]
    [InlineData("settled", "never settles, but everything stands where its pressures put it")]
    public void A_lie_is_found_out(string lie, string message)
    {
        Assert.SkipUnless(ClingoProgram.IsInstalled, ClingoProgram.Absent);
        var unit = Read(Path.Combine(Demos, "rill", "rill.yaml"));
        var report = new UnitJudge(unit, JudgeMode.Quick).Report(Assembly.DefaultOf(unit));
        Assert.Empty(Disagreements(report));
        Assert.Contains(message, string.Join('\n', Disagreements(Lie(report, lie))), StringComparison.Ordinal);

        List<string> Disagreements(AssemblyReport told)
        {
            var batch = new ClingoBatch(unit, [told]);
            return batch.Compare(ClingoProgram.Derive(batch.Facts()), skip: 0).Disagreements;
        }
    }

    private void Compare(string path)
    {
        Assert.SkipUnless(ClingoProgram.IsInstalled, ClingoProgram.Absent);
        var tally = CompareAll(Read(path));
        output.WriteLine($"{Path.GetFileName(path)}: {tally}");
        var shown = tally.Disagreements.Take(MostShown).Append($"{tally.Disagreements.Count} disagreements; {tally}");
        Assert.True(tally.Disagreements.Count == 0, string.Join(Environment.NewLine, shown));
        Assert.True(tally is { Passages: > 0, Levels: > 0, Positions: > 0 }, "nothing was compared");
    }

    /// <summary>A report of the teaching unit with something changed in gear R.</summary>
    private static AssemblyReport Lie(AssemblyReport report, string lie)
    {
        var gear = report.Gears[0];
        var pocket = gear.Pressures.Single(passage => passage.Passage == "body.either");
        var changed = lie switch
        {
            "oil" => gear with { Pressures = gear.Pressures.Replace(pocket, pocket with { State = OilState.Exhaust }) },
            "pressure" => gear with { Pressures = gear.Pressures.Replace(pocket, pocket with { Kilopascals = 1 }) },
            "ball" => gear with { Positions = [.. gear.Positions.Select(position => position.Kind == PositionKind.Ball ? position with { Position = new Stand.OnSeat("plate@11") } : position)] },
            "cross-feed" => gear with { CrossFeeds = [new CrossFeed("housing.high", "body.line", "plate@13", "plate", "1", [], Place.None)] },
            _ => gear with { Settled = false },
        };
        return report with { Gears = report.Gears.Replace(gear, changed) };
    }

    private static Unit Read(string path)
    {
        var read = CircuitReader.ReadFile(path);
        return read.Unit ?? throw new InvalidDataException(string.Join(Environment.NewLine, read.Findings));
    }

    private static ClingoTally CompareAll(Unit unit)
    {
        var assemblies = Assemblies(unit);
        var matched = assemblies.Where(assembly => assembly.Matched is not null).ToList();
        var batches = assemblies.Where(assembly => assembly.Matched is null).Chunk(BatchSize).DefaultIfEmpty([]).ToList();
        var total = new ClingoTally();
        Parallel.For(
            0, batches.Count, new ParallelOptions { MaxDegreeOfParallelism = 2 },
            () =>
            {
                var judge = new UnitJudge(unit, JudgeMode.Quick);
                return (Judge: judge, Matched: matched.ConvertAll(assembly => judge.Report(assembly)));
            },
            (index, _, own) =>
            {
                // The matched sets lie in every batch, to be held against, and count in the first.
                var batch = new ClingoBatch(unit, own.Matched.Concat(batches[index].Select(assembly => own.Judge.Report(assembly))));
                var tally = batch.Compare(ClingoProgram.Derive(batch.Facts()), index == 0 ? 0 : matched.Count);
                lock (total) total.Add(tally);
                return own;
            },
            _ => { });
        return total;
    }

    private static List<Assembly> Assemblies(Unit unit)
    {
        IEnumerable<ImmutableArray<Revision>> choices = [[]];
        foreach (var part in unit.Parts)
            choices = choices.SelectMany(choice => part.Revisions.Select(choice.Add));
        return [.. choices.Select(choice => Assembly.Of(unit, choice))];
    }
}
