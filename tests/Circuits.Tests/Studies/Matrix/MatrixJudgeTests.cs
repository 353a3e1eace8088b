using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Matrix;
using Circuits.Tests.Properties;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Studies.Matrix;

/// <summary>The quick way of a matrix, which solves equal gears once and builds no findings, says what the full report of each assembly says.</summary>
public class MatrixJudgeTests
{
    [Theory]
    [InlineData("rill", 1)]
    [InlineData("weir", 1)]
    [InlineData("firth", 7)]
    public void Demo_units_come_out_as_their_reports_say(string name, int every)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        Assert.Null(Difference(unit, every, threads: 2));
    }

    [Fact]
    public void Random_units_come_out_as_their_reports_say()
    {
        var gen = new UnitGen(revisions: true);
        var compared = 0;
        for (var i = 0; i < 120; i++)
        {
            var text = SpecText.Of(gen.Generate(new PCG(3, Property.Seed + (ulong)i), null, out _));
            var unit = CircuitReader.ReadText(text, "drawn.yaml").Unit ?? throw new InvalidDataException(text);
            var every = (int)Math.Max(1, MatrixSpace.Of(unit)!.Count / 16);
            if (Difference(unit, every, threads: 1) is { } difference) Assert.Fail($"unit {i}: {difference}\n{text}");
            compared++;
        }

        Assert.Equal(120, compared);
    }

    [Fact]
    public void Equal_networks_are_counted_once()
    {
        // A second revision that differs in nothing that oil feels.
        var text = File.ReadAllText(Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml"));
        var unit = CircuitReader.ReadText(text, "rill.yaml").Unit!;
        var plate = unit.Parts.IndexOf(unit.FindPart("plate")!);
        var twin = unit.Parts[plate].Revisions[1] with { Name = "3" };
        var more = unit with { Parts = unit.Parts.SetItem(plate, unit.Parts[plate] with { Revisions = unit.Parts[plate].Revisions.Add(twin) }) };
        Assert.Equal((4, 4), Counts(unit));
        Assert.Equal((6, 4), Counts(more));

        static (long, int) Counts(Unit unit)
        {
            var summary = new MatrixSummary(MatrixSpace.Of(unit)!);
            Run(summary.Space, 1, entry => summary.Add(entry));
            return (summary.Space.Count, summary.Networks);
        }
    }

    private static string? Difference(Unit unit, int every, int threads)
    {
        var space = MatrixSpace.Of(unit)!;
        var judge = new UnitJudge(unit);
        string? difference = null;
        Run(space, threads, entry =>
        {
            if (entry.Number % every != 0 || difference is not null) return;
            var report = judge.Report(space.At(entry.Number), timed: false);
            if (entry.Behaviour.Verdict != report.Verdict) difference = $"assembly {entry.Number}: {entry.Behaviour.Verdict}, report {report.Verdict}";
            for (var gear = 0; gear < report.Gears.Length; gear++)
            {
                var (quick, full) = (entry.Behaviour.Gears[gear], GearBehaviour.Of(report.Gears[gear]));
                if (quick.Fingerprint != full.Fingerprint || quick.Verdict != full.Verdict || quick.Feel != full.Feel || quick.CrossFeeds != full.CrossFeeds)
                    difference = $"assembly {entry.Number} ({string.Join(' ', report.Assembly.Choice)}) gear {report.Gears[gear].Gear}: {quick.Verdict} {quick.Feel} {quick.CrossFeeds}, report {full.Verdict} {full.Feel} {full.CrossFeeds}";
            }
        });
        return difference;
    }

    /// <summary>Rows tell the worst change of assemblies whose gears are right, and no other; and are never better than the report.</summary>
    [Fact]
    public void The_worst_change_is_that_of_the_report()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "weir", "weir.yaml")).Unit!;
        var space = MatrixSpace.Of(unit)!;
        var judge = new UnitJudge(unit);
        var told = new List<ShiftVerdict>();
        Run(space, 2, entry =>
        {
            if (entry.Behaviour.Verdict != Verdict.AsCharted)
            {
                Assert.Null(entry.Behaviour.WorstChange);
                return;
            }

            var report = judge.Report(space.At(entry.Number));
            Assert.Equal(report.WorstChange, entry.Behaviour.WorstChange);
            Assert.Equal(
                report.Changes.Where(change => change.Verdict != ShiftVerdict.Good && !change.SharedByMatched).Select(change => (change.Plan.Name, change.At.Name, change.Verdict)),
                entry.Behaviour.Changes!.Value.Select(change => (change.Change, change.Condition, change.Verdict)));
            told.Add(report.WorstChange);
        });

        // D of the unit's page: with neither hole that meters the second band, 1-2 bangs.
        Assert.Equal([(ShiftVerdict.Good, 8), (ShiftVerdict.Harsh, 2)], told.GroupBy(verdict => verdict).Select(same => (same.Key, same.Count())).Order());
    }

    private static void Run(MatrixSpace space, int threads, Action<MatrixEntry> take) =>
        MatrixRun.Run<IReadOnlyList<MatrixEntry>>(space, (0, space.Count), threads, () => entries => entries, entries =>
        {
            foreach (var entry in entries) take(entry);
        }, CancellationToken.None);
}
