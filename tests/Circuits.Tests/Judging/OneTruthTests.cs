using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Faults;
using Circuits.Studies.Matrix;
using Circuits.Tests.Demo;
using Circuits.Tests.Properties;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>No verdict of an assembly contradicts what <c>pressures</c> and <c>shifts</c> print of it. <c>contradictions</c> among the benchmarks counts them over more.</summary>
public class OneTruthTests
{
    [Theory]
    [InlineData("rill", 1, 3)]
    [InlineData("weir", 5, 17)]
    [InlineData("firth", 211, 97)]
    public void Demo_units_do_not_contradict_themselves(string name, int everyAssembly, int everyFault)
    {
        var judge = new UnitJudge(new DemoUnit($"{name}/{name}.yaml").Unit);
        var truth = new OneTruth(judge);
        var space = MatrixSpace.Of(judge.Unit)!;
        for (var number = 0L; number < space.Count; number += everyAssembly) Compare(space.At(number));
        foreach (var set in judge.Unit.Matched)
        {
            var sound = Assembly.Of(judge.Unit, set);
            foreach (var fault in FaultLibrary.Of(sound).Where((_, i) => i % everyFault == 0)) Compare(fault.In(sound));
        }

        Assert.Empty(truth.Contradictions);
        Assert.True(truth.Compared > 40, $"{truth.Compared} compared");

        void Compare(Assembly assembly) => truth.Compare(string.Join(' ', assembly.Choice.Select(part => part.Value).Concat(assembly.Changes.Select(change => change.Words()))), assembly, judge.Report(assembly));
    }

    [Fact]
    public void Random_units_do_not_contradict_themselves()
    {
        var gen = new UnitGen(revisions: true);
        var (compared, bad) = (0, 0);
        for (var i = 0; i < 60; i++)
        {
            var text = SpecText.Of(gen.Generate(new PCG(5, Property.Seed + (ulong)i), null, out _));
            var judge = new UnitJudge(CircuitReader.ReadText(text, "drawn.yaml").Unit ?? throw new InvalidDataException(text));
            var truth = new OneTruth(judge);
            var space = MatrixSpace.Of(judge.Unit)!;
            for (var number = 0L; number < Math.Min(4, space.Count); number++)
            {
                var report = judge.Report(space.At(number));
                bad += report.Verdict == Verdict.AsCharted ? 0 : 1;
                truth.Compare($"unit {i}, assembly {number}", space.At(number), report);
            }

            if (truth.Contradictions.Count > 0) Assert.Fail($"{truth.Contradictions[0]}\n{text}");
            compared += truth.Compared;
        }

        Assert.True(compared > 200 && bad > 20, $"{compared} compared, {bad} assemblies not as charted");
    }
}
