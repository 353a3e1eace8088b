using Circuits.Laws;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>The static answer's orifice networks against values computed by other means than this code, and against rules of the trade.</summary>
public class OrificeNetworkTests
{
    // Common practice, no source: a feed d1 and a drain d2 leave 1 / (1 + (d2 / d1)^4): a drain of half, equal, double the feed leaves 94, 50, 6 %.
    [Theory]
    [InlineData(0.5, 94)]
    [InlineData(1.0, 50)]
    [InlineData(2.0, 6)]
    public void A_drain_of_half_equal_and_double_the_feed(double drain, double percent) =>
        Assert.Equal(percent, Node($"{{between: [source, node], hole: 1 mm}}, {{between: [node, exhaust], hole: {drain} mm}}") / 10, 0.5);

    // Computed: node between 1.0 mm (upstream) and 1.5 mm, 10 bar to none: 1.649485 bar; the other way round 8.350515 bar.
    [Theory]
    [InlineData(1.0, 1.5, 164.9485)]
    [InlineData(1.5, 1.0, 835.0515)]
    public void Two_holes_in_series(double first, double second, double kilopascals) =>
        Assert.Equal(kilopascals, Node($"{{between: [source, node], hole: {first} mm}}, {{between: [node, exhaust], hole: {second} mm}}"), 1e-4);

    // Computed: 10 bar through 1.0 mm to a node that drains by 0.8 and 1.2 mm: 1.877440673 bar.
    [Fact]
    public void A_feed_with_two_drains() =>
        Assert.Equal(187.7440673, Node("{between: [source, node], hole: 1.0 mm}, {between: [node, exhaust], hole: 0.8 mm}, {between: [node, exhaust], hole: 1.2 mm}"), 1e-5);

    // Computed: 1.0 and 1.5 mm side by side are 2.55254403 mm2, one hole of 1.802776 mm.
    [Fact]
    public void Two_holes_side_by_side_are_one() =>
        Assert.Equal(
            Node("{between: [source, node], hole: 1.802776 mm}, {between: [node, exhaust], hole: 1.3 mm}"),
            Node("{between: [source, node], hole: 1.0 mm}, {between: [source, node], hole: 1.5 mm}, {between: [node, exhaust], hole: 1.3 mm}"), 1e-3);

    // Common practice, no source: 1 / d^4 adds up in series; two holes of 1.0 mm act as one of 0.841 mm.
    [Fact]
    public void Two_equal_holes_in_series_act_as_one_of_0_841()
    {
        var two = CircuitCase.Body(
            "source between node",
            "restrictions: [{between: [source, between], hole: 1 mm}, {between: [between, node], hole: 1 mm}, {between: [node, exhaust], hole: 1 mm}]",
            "signals: {body.source: 1000 kPa}").Pressure("node");
        Assert.Equal(Node("{between: [source, node], hole: 0.8408964 mm}, {between: [node, exhaust], hole: 1 mm}"), two, 1e-3);
        Assert.Equal(0.841, Math.Pow(2, -0.25), 5e-4);
    }

    // Computed: 10 bar; S-a 1.0, S-b 1.2, a-b 0.8, a-0 1.2, b-0 1.0 mm: 4.44087103 and 5.55912897 bar; flows 1.041337, 1.340246, b to a 0.298909 L/min with
    // 850 kg/m3 and Cd 0.611.
    [Fact]
    public void A_bridge()
    {
        var bridge = CircuitCase.Body(
            "source a b",
            "restrictions: [{between: [source, a], hole: 1.0 mm}, {between: [source, b], hole: 1.2 mm}, {between: [a, b], hole: 0.8 mm}, "
            + "{between: [a, exhaust], hole: 1.2 mm}, {between: [b, exhaust], hole: 1.0 mm}]",
            "signals: {body.source: 1000 kPa}");
        var (a, b) = (bridge.Pressure("a"), bridge.Pressure("b"));
        Assert.Equal(444.087103, a, 1e-4);
        Assert.Equal(555.912897, b, 1e-4);
        Assert.Equal(1.041337, LitresPerMinute(1.0, 1000 - a), 1e-6);
        Assert.Equal(1.340246, LitresPerMinute(1.2, 1000 - b), 1e-6);
        Assert.Equal(0.298909, LitresPerMinute(0.8, b - a), 1e-6);
    }

    private static double Node(string restrictions) =>
        CircuitCase.Body("source node", $"restrictions: [{restrictions}]", "signals: {body.source: 1000 kPa}").Pressure("node");

    private static double LitresPerMinute(double millimetres, double kilopascals) =>
        SharpOrifice.Flow(Math.PI / 4 * millimetres * millimetres * 1e-6, kilopascals * 1e3, 850, 1e-7).Flow * 6e4;
}
