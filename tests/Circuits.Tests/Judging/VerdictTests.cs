using Circuits.Model;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>What is judged in a small part of a report's time is what the report says.</summary>
public class VerdictTests
{
    [Theory]
    [InlineData("rill/rill.yaml", 1)]
    [InlineData("weir/weir.yaml", 7)]
    [InlineData("firth/firth.yaml", 97)]
    public void Verdicts_of_gears_are_those_of_the_report(string file, int every)
    {
        var unit = new DemoUnit(file);
        var space = Circuits.Studies.Matrix.MatrixSpace.Of(unit.Unit)!;
        var all = new HashSet<Verdict>();
        for (var number = 0L; number < space.Count; number += every)
        {
            var assembly = space.At(number);
            var reported = unit.Judge.Report(assembly).Gears.Select(gear => gear.Verdict).ToList();
            Assert.Equal(reported, unit.Judge.Verdicts(assembly, Enumerable.Range(0, reported.Count)));

            // In another order, and not all: a gear that comes after another still starts from it.
            Assert.Equal(reported[^1], unit.Judge.Verdicts(assembly, [reported.Count - 1]).Single());
            all.UnionWith(reported);
        }

        Assert.Contains(Verdict.AsCharted, all);
        Assert.Contains(Verdict.Lost, all);
    }
}
