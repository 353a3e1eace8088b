using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Pressures;
using Circuits.Studies.Spread;
using Xunit;

namespace Circuits.Tests.Studies.Spread;

public sealed class SpreadTests
{
    private const double Feed = 1.0, FeedPlus = 0.1, Drain = 1.2;

    /// <summary>A hole from a given pressure, and one to sump: p = ps / (1 + (d2 / d1)^4), so oil without viscosity has a closed form.</summary>
    private const string Tee = """
        format: 1
        unit: Tee
        data: invented
        fluid: {temperature: 100 degC, viscosities: [[40 degC, 2 mm2/s], [100 degC, 1 mm2/s]], density: 860 kg/m3}
        parts:
          body:
            kind: casting
            passages: {source: {}, node: {}}
            restrictions: [{between: [source, node], hole: 1.0 +- 0.1 mm}, {between: [node, exhaust], hole: 1.2 mm}]
        gears:
          G: {signals: {body.source: 1000 kPa}, apply: []}
        taps: {node: body.node}
        """;

    /// <summary>The pressure rises with the first hole, so its 5, 50 and 95 % are those of the hole's: 0.9 of the tolerance either way.</summary>
    [Fact]
    public void Ranges_are_those_of_the_closed_form()
    {
        var range = PressureSpread.Of(new SpreadRequest(4000, 1), 1, Samples(new SpreadRequest(4000, 1))).Points[0].Gears[0].Taps[0]!.Value;
        Assert.Equal(Pressure(Feed - (0.9 * FeedPlus)), range.Low, 4.0);
        Assert.Equal(Pressure(Feed), range.Middle, 4.0);
        Assert.Equal(Pressure(Feed + (0.9 * FeedPlus)), range.High, 4.0);
        Assert.Equal(0, range.Missing);

        static double Pressure(double feed) => 1000 / (1 + Math.Pow(Drain / feed, 4));
    }

    [Fact]
    public void The_same_seed_draws_the_same_units_and_another_others()
    {
        double[] Pressures(ulong seed) => [.. Samples(new SpreadRequest(20, seed)).Select(report => report.Points[0].Gears[0].Taps[0]!.Value)];
        Assert.Equal(Pressures(1), Pressures(1));
        Assert.NotEqual(Pressures(1), Pressures(2));
        Assert.Equal(20, Pressures(1).Distinct().Count());
    }

    /// <summary>Each sample is a matter of its own number alone, whatever thread it runs on.</summary>
    [Fact]
    public void Samples_stand_in_their_order()
    {
        var several = Samples(new SpreadRequest(12, 5));
        for (var i = 0; i < several.Length; i++)
        {
            var unit = CircuitReader.ReadText(Tee, "tee.yaml", draw: (place, side) => SpreadSample.Draw(5, i, place, side)).Unit!;
            Assert.Equal(Ask(unit).Points[0].Gears[0].Taps[0], several[i].Points[0].Gears[0].Taps[0]);
        }
    }

    [Fact]
    public void Draws_fill_their_range_evenly_and_know_nothing_of_one_another()
    {
        var draws = Enumerable.Range(0, 4000).Select(i => (A: Draw(i, 3, 0), B: Draw(i, 4, 0), Side: Draw(i, 3, 1))).ToList();
        foreach (var values in new[] { draws.Select(draw => draw.A), draws.Select(draw => draw.B), draws.Select(draw => draw.Side) })
        {
            // Of an even spread from -1 to 1: mean 0, variance 1/3.
            Assert.Equal(0, values.Average(), 0.04);
            Assert.Equal(1 / 3.0, values.Average(value => value * value), 0.02);
            Assert.All(values, value => Assert.InRange(value, -1, 1));
        }

        Assert.Equal(0, draws.Average(draw => draw.A * draw.B), 0.03);
        Assert.Equal(0, draws.Average(draw => draw.A * draw.Side), 0.03);

        static double Draw(int sample, int line, int side) => SpreadSample.Draw(9, sample, new Place("folder/tee.yaml", line, 8), side);
    }

    [Fact]
    public void It_does_not_matter_from_where_the_file_is_named() => Assert.Equal(
        SpreadSample.Draw(1, 2, new Place("a/b/unit.yaml", 3, 4), 0), SpreadSample.Draw(1, 2, new Place("unit.yaml", 3, 4), 0));

    /// <summary>Type 7 of R. J. Hyndman and Y. Fan, Sample quantiles in statistical packages, Am. Stat. 50 (1996): of 0, 1 ... 100 the p-th is p.</summary>
    [Fact]
    public void Nine_tenths_of_a_hundred_and_one_numbers()
    {
        var range = SpreadRange.Of([.. Enumerable.Range(0, 101).Select(i => (double?)(100 - i)), null])!.Value;
        Assert.Equal((5.0, 50.0, 95.0), (range.Low, range.Middle, range.High));
        Assert.Equal(100.0 / 102, range.Missing, 1e-12);
        Assert.Null(SpreadRange.Of([null, null]));
    }

    /// <summary>Both ends of a size, by its own reading; the size as written in between.</summary>
    [Theory]
    [InlineData("hole: 2.0 +- 0.1 mm", 1.9, 2.1)]
    [InlineData("hole: \"#45 +- 0.1 mm\"", 2.0828 - 0.1, 2.0828 + 0.1)]
    [InlineData("hole: 0.1 in +- 10 %", 2.286, 2.794)]
    public void A_hole_comes_out_within_its_tolerance(string hole, double least, double most)
    {
        double At(double share) => Math.Sqrt(4 / Math.PI * Read(hole, share).Parts[0].Revisions[0].Restrictions[0].Shape.Area!.Value.SquareMillimetres);
        Assert.Equal(least, At(-1), 1e-9);
        Assert.Equal(most, At(1), 1e-9);
        Assert.Equal((least + most) / 2, At(0), 1e-9);
    }

    [Fact]
    public void Each_side_of_a_slot_comes_out_within_its_own()
    {
        var slot = (Shape.Slot)Read("slot: 4 +- 0.2 x 14 +- 1 mm", 1).Parts[0].Revisions[0].Restrictions[0].Shape;
        Assert.Equal((4.2, 15.0), (slot.Width.Millimetres, slot.Length.Millimetres));
    }

    private static Unit Read(string shape, double share)
    {
        var text = Tee.Replace("hole: 1.0 +- 0.1 mm", shape, StringComparison.Ordinal);
        var read = CircuitReader.ReadText(text, "tee.yaml", draw: (_, _) => share);
        Assert.True(read.Unit is not null, string.Join('\n', read.Findings.Select(finding => finding.Words())));
        return read.Unit;
    }

    private static ImmutableArray<PressureReport> Samples(SpreadRequest request) =>
        SpreadSample.Ask(request, draw => CircuitReader.ReadText(Tee, "tee.yaml", draw: draw).Unit, Ask, TestContext.Current.CancellationToken);

    private static PressureReport Ask(Unit unit) => PressureStudy.Run(Assembly.DefaultOf(unit), [new OperatingPoint("", 100, 1000)], ["G"]);
}
