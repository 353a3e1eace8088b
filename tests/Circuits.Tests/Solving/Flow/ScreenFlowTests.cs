using System.Globalization;
using Circuits.Laws;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>How a bypass opens with flow: shut up to its difference, then evenly over ten kilopascals.</summary>
public sealed class ScreenFlowTests
{
    // Thin oil through 6 mm, Q = 0.611 A sqrt(2 dp / rho) times the share that is open.
    [Theory]
    [InlineData(-200, 0)]
    [InlineData(79, 0)]
    [InlineData(80, 0)]
    [InlineData(82.5, 0.25)]
    [InlineData(85, 0.5)]
    [InlineData(90, 1)]
    [InlineData(300, 1)]
    public void A_bypass_opens_over_ten_kilopascals_from_its_difference(double across, double open)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "dirty clean", "screens: {filter: {from: dirty, to: clean, area: 12 mm2, bypass: {opens-at: 80 kPa, hole: 6 mm}}}",
            string.Create(CultureInfo.InvariantCulture, $"signals: {{body.dirty: {500 + across} kPa, body.clean: 500 kPa}}")).Assembly());
        var bypass = Assert.Single(flow.Solve(FlowCase.Thin).Elements, element => element.Element.Kind == FlowKind.BypassPort);
        var expected = open * 0.611 * Math.PI / 4 * 36e-6 * Math.Sqrt(2 * 1e3 * Math.Abs(across) / 850);
        Assert.Equal(expected, bypass.Rate, Math.Max(1e-12, 1e-3 * Math.Abs(expected)));
    }

    // Two equal holes in series share the difference; so do flow and the static answer, which agree but for what opening takes (10 kPa).
    [Theory]
    [InlineData("", 300, 0.5)]
    [InlineData(", bypass: {opens-at: 80 kPa, hole: 6 mm}", 520, 10)]
    public void Flow_and_the_static_answer_agree(string bypass, double behind, double within)
    {
        var flow = new FlowCase(CircuitCase.Body("dirty clean", $$"""
            screens: {filter: {from: dirty, to: clean, area: 12 mm2{{bypass}} } }
            restrictions: [{between: [clean, exhaust], area: 12 mm2}]
            """, "signals: {body.dirty: 600 kPa}").Assembly());
        CircuitCase.Near(behind, flow.Static().PressureAt(flow.Node("clean")));
        Assert.Equal(behind, flow.Solve(FlowCase.Thin).PressureAt(flow.Node("clean")) / 1e3, within);
    }

    [Fact]
    public void The_share_that_is_open_changes_as_its_slope_says()
    {
        for (var difference = 60e3; difference < 110e3; difference += 500)
        {
            if (Math.Abs(difference - 80e3) < 1 || Math.Abs(difference - 90e3) < 1) continue;
            var by = (SpringBypass.Open(difference + 1, 80e3, 10e3).Area - SpringBypass.Open(difference - 1, 80e3, 10e3).Area) / 2;
            Assert.Equal(by, SpringBypass.Open(difference, 80e3, 10e3).Slope, 1e-12);
        }
    }
}
