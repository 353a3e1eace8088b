using Circuits.Judging.Changes;
using Circuits.Judging.Sizes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Pressures;
using Circuits.Studies.Sensitivity;
using Circuits.Studies.Shifts;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Sensitivity;

public sealed class SensitivityTests
{
    private static readonly Unit Bench = Read("tests/Circuits.Tests/Cli/units/bench.yaml");

    /// <summary>A hole of an assumed 20 mm2 from a given pressure, and one of 20 mm2 to sump: p = ps / (1 + (A2 / A1)^2).</summary>
    [Fact]
    public void A_missing_hole_moves_the_pressure_as_the_closed_form_says()
    {
        var unit = CircuitCase.Of(
            "fluid: {temperature: 100 degC, viscosities: [[40 degC, 2 mm2/s], [100 degC, 1 mm2/s]], density: 860 kg/m3}\n"
            + "parts:\n  body:\n    kind: casting\n    passages: {source: {}, node: {}}\n"
            + "    restrictions: [{between: [source, node]}, {between: [node, exhaust], area: 20 mm2}]\n"
            + "gears:\n  G: {signals: {body.source: 1000 kPa}, apply: []}\ntaps: {node: body.node}\n").Assembly();
        var effect = Assert.Single(PressureStudy.Matters(unit, [new OperatingPoint("", 100, 1000)], ["G"]));
        Assert.Equal(("restriction between body.source and body.node", "20 mm2", "node in G"), (effect.Size, effect.Assumed.Words(), effect.Of.Words()));
        Assert.Equal(500, effect.AsAssumed!.Value, 1.0);
        Assert.Equal(200, effect.WithLess!.Value, 1.0);
        Assert.Equal(800, effect.WithMore!.Value, 1.0);
        Assert.Equal(300, effect.Moves, 1.0);
    }

    /// <summary>What is varied is what was assumed: given, it is no longer missing, and nothing else changes of the list.</summary>
    [Theory]
    [InlineData("tests/Circuits.Tests/Cli/units/bench.yaml", 25)]
    [InlineData("circuits/rill/rill.yaml", 4)]
    [InlineData("circuits/weir/weir.yaml", 2)]
    public void A_size_that_is_varied_is_no_longer_missing(string file, int least)
    {
        var assembly = Assembly.DefaultOf(Read(file));
        var sizes = MissingSizes.Of(assembly).ToList();
        Assert.True(sizes.Count >= least, $"{sizes.Count}");
        foreach (var size in sizes)
        {
            foreach (var way in new[] { -1, 1 })
            {
                var left = MissingSizes.Of(size.Vary(way)).Select(each => each.Name).ToList();
                Assert.DoesNotContain(size.Name, left);

                // A fill volume stands for the stroke as well; what is assumed of one size may follow another, but the list does not.
                Assert.Equal(sizes.Count - 1, left.Count);
            }
        }
    }

    [Fact]
    public void Every_size_that_shifts_assume_is_among_the_missing()
    {
        var assembly = Assembly.DefaultOf(Bench);
        var assumed = ShiftStudy.Time(assembly, ShiftStudy.ConditionsOf(Bench), ShiftPlans.Of(Bench)).Assumptions;
        var names = MissingSizes.Of(assembly).Select(size => size.Name).ToList();
        foreach (var sentence in assumed.Select(assumption => assumption.Words()).Where(sentence => sentence.Contains("clutch", StringComparison.Ordinal)))
        {
            var what = sentence[..sentence.IndexOf(':', StringComparison.Ordinal)];
            Assert.Contains(names, name => what.Contains(name.Split(" of clutch ")[0], StringComparison.Ordinal) && what.EndsWith(name.Split(" of clutch ")[^1], StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_matters_most_comes_first_and_what_does_not_matter_is_left_out()
    {
        var effects = PressureStudy.Matters(Assembly.DefaultOf(Bench), PressureStudy.PointsOf(Bench), ["N", "1", "2"]);
        Assert.Equal("displacement of the pump", effects[0].Size);
        Assert.Equal(effects.OrderByDescending(effect => effect.Moves), effects);
        Assert.DoesNotContain(effects, effect => effect.Size.Contains("friction", StringComparison.Ordinal));
        Assert.Contains(ShiftStudy.Matters(Assembly.DefaultOf(Bench), ShiftStudy.ConditionsOf(Bench), ShiftPlans.Of(Bench)), effect => effect.Size == "friction of clutch high");
    }

    [Fact]
    public void Where_very_many_sizes_are_missing_none_is_varied_and_it_is_said()
    {
        var passages = string.Join(", ", Enumerable.Range(0, 100).Select(i => $"p{i}: {{}}"));
        var holes = string.Join(", ", Enumerable.Range(1, 99).Select(i => $"{{between: [p0, p{i}]}}"));
        var assembly = CircuitCase.Of(
            $"parts:\n  body:\n    kind: casting\n    passages: {{{passages}}}\n    restrictions: [{holes}]\n"
            + "gears:\n  G: {signals: {body.p0: 100 kPa}, apply: []}\n").Assembly();
        Assert.Empty(PressureStudy.Matters(assembly, [new OperatingPoint("", 90, 1000)], ["G"]));
        Assert.Contains("more than 80", SensitivityStudy.Note(assembly)!.Words(), StringComparison.Ordinal);
        Assert.Null(SensitivityStudy.Note(Assembly.DefaultOf(Bench)));
    }

    [Fact]
    public void A_unit_that_gives_every_size_has_nothing_missing() =>
        Assert.Empty(MissingSizes.Of(Assembly.DefaultOf(Read("circuits/firth/firth.yaml"))));

    private static Unit Read(string file) => CircuitReader.ReadFile(Path.Combine(Repository.Root, file)).Unit!;
}
