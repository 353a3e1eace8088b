using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Faults;
using Circuits.Studies.Hazards;
using Circuits.Studies.Matrix;
using Circuits.Studies.Remedies;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>The verdicts of an assembly are the same, whichever study is asked.</summary>
public class OneVerdictTests
{
    [Theory]
    [InlineData("rill", 1)]
    [InlineData("weir", 7)]
    [InlineData("firth", 173)]
    public void Mixes_have_the_same_verdicts_everywhere(string name, int every)
    {
        var judge = new UnitJudge(new DemoUnit($"{name}/{name}.yaml").Unit);
        var space = MatrixSpace.Of(judge.Unit)!;
        var before = Assembly.Of(judge.Unit, judge.Unit.Matched[0]);
        var reports = new List<AssemblyReport>();
        for (var number = 0L; number < space.Count; number += every)
        {
            var assembly = space.At(number);
            var report = judge.Report(assembly);
            reports.Add(report);
            var verdicts = report.Gears.Select(gear => gear.Verdict).ToList();
            Assert.Equal(verdicts, judge.Verdicts(assembly, Enumerable.Range(0, verdicts.Count)));
            Assert.Equal(verdicts, WhatIf.Of(new UnitJudge(judge.Unit), before, assembly, []).After.Gears.Select(gear => gear.Verdict));
            var entry = EntryOf(space, number);
            Assert.Equal(verdicts, entry.Behaviour.Gears.Select(gear => gear.Verdict));
            if (report.Verdict == Verdict.AsCharted) Assert.Equal(report.WorstChange, entry.Behaviour.WorstChange ?? ShiftVerdict.Good);
            if (new RemedyJudge(judge, assembly, static _ => { }, CancellationToken.None).IsRightBefore)
                Assert.True(report.Verdict == Verdict.AsCharted && report.WorstChange < ShiftVerdict.Flare, $"{string.Join(' ', assembly.Choice.Select(part => part.Value))} is {report.Verdict}, {report.WorstChange}");
        }

        var rows = ManyChanges.Run(judge.Unit, JudgeMode.Full, [.. reports.Select((report, i) => ($"{i}", report.Assembly))], threads: 2, TestContext.Current.CancellationToken).ToList();
        foreach (var (report, row) in reports.Zip(rows))
        {
            Assert.Equal(report.Gears.Select(gear => gear.Verdict), row.Verdicts);
            Assert.Equal(report.Changes.Select(change => change.Verdict).DefaultIfEmpty(ShiftVerdict.Good).Max(), row.WorstChange);
        }

        Assert.Contains(reports, report => report.Verdict == Verdict.AsCharted);
        Assert.Contains(reports, report => report.Verdict != Verdict.AsCharted);
    }

    /// <summary>A gear that is not as charted with a fault is an effect of it, and what is an effect is told by the report on the same fault.</summary>
    [Theory]
    [InlineData("rill", 3)]
    [InlineData("weir", 29)]
    [InlineData("firth", 211)]
    public void Hazards_tell_what_the_report_on_the_fault_tells(string name, int every)
    {
        var judge = new UnitJudge(new DemoUnit($"{name}/{name}.yaml").Unit);
        var sound = Assembly.Of(judge.Unit, judge.Unit.Matched[0]);
        var faults = FaultLibrary.Of(sound).Where((_, i) => i % every == 0).ToDictionary(fault => fault.Code);
        var hazards = HazardStudy.Run(sound, assembly => [.. FaultLibrary.Of(assembly).Where(fault => faults.ContainsKey(fault.Code)).Select(fault => HazardMode.Of(assembly, fault))], threads: 2, stop: TestContext.Current.CancellationToken);
        var (bad, silent) = (0, 0);
        foreach (var row in hazards.Rows)
        {
            var report = judge.Report(faults[row.Code].In(sound));
            var effects = row.Effects.Where(effect => !effect.NoCurrent).Select(effect => effect.Gear).ToHashSet();
            foreach (var gear in report.Gears)
            {
                var into = report.Changes.Where(change => change.Plan.To.Name == gear.Gear && change.Verdict != ShiftVerdict.Good && !change.SharedByMatched).ToList();
                if (gear.Verdict != Verdict.AsCharted) Assert.True(effects.Contains(gear.Gear), $"{row.Code}: {gear.Gear} is {gear.Verdict}, and nothing is felt");
                if (effects.Contains(gear.Gear))
                    Assert.True(gear.Verdict != Verdict.AsCharted || gear.Drive?.Feel.Kind != FeelKind.AsItShould || into.Count > 0, $"{row.Code}: an effect in {gear.Gear}, and the report says nothing");
                if (row.ChangesTimed && into.Exists(change => change.Verdict >= ShiftVerdict.Flare)) Assert.True(effects.Contains(gear.Gear), $"{row.Code}: {into[0].Plan.Name} is {into[0].Verdict}, and nothing is felt in {gear.Gear}");
            }

            bad += report.Verdict != Verdict.AsCharted ? 1 : 0;
            silent += effects.Count == 0 ? 1 : 0;
        }

        Assert.True(bad > 0 && silent > 0, $"{bad} bad, {silent} silent");
    }

    private static MatrixEntry EntryOf(MatrixSpace space, long number)
    {
        MatrixEntry? found = null;
        MatrixRun.Run<IReadOnlyList<MatrixEntry>>(space, (number, number + 1), 1, () => entries => entries, entries => found = entries[0], CancellationToken.None);
        return found!.Value;
    }
}
