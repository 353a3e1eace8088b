using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Solving.Flow;
using Circuits.Solving.Rules;
using Circuits.Studies.Pressures;
using Circuits.Tests.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Studies;

/// <summary>Steady pressures as a study: budgets that add up, and no numbers where there is no answer.</summary>
public sealed class PressureStudyTests
{
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void What_the_pump_gives_returns_to_sump(string name)
    {
        var unit = Demo(name);
        foreach (var set in unit.Matched)
        {
            var report = PressureStudy.Run(Assembly.Of(unit, set), PressureStudy.PointsOf(unit), [.. unit.Gears.Select(gear => gear.Name)]);
            Assert.DoesNotContain(report.Findings, finding => finding.Rule == DidNotConverge.Rule.Name);
            foreach (var gear in report.Points.SelectMany(point => point.Gears))
            {
                // Pressures that the gear fixes give and take oil of their own; so do flows too small to be told.
                if (unit.FindGear(gear.Gear)!.Signals.IsEmpty)
                    Assert.Equal(gear.PumpLitresPerMinute, gear.Budget.Sum(rate => rate.LitresPerMinute), 0.01 * gear.PumpLitresPerMinute);
                Assert.InRange(gear.SpilledLitresPerMinute, 0, gear.PumpLitresPerMinute * (1 + 1e-9));
            }
        }
    }

    /// <summary>A fifth of the pump's oil through a leak: Q = Cd A sqrt(2 p / rho), Cd 0.611 (Rabie, eq 2.39), at 550 kPa of line.</summary>
    [Fact]
    public void A_leak_shows_in_the_budget_as_the_orifice_law_has_it()
    {
        var unit = CircuitReader.ReadText(
            """
            format: 1
            unit: Leaky
            data: invented
            fluid: {grade: ISO VG 32, temperature: 90 degC, density: 850 kg/m3}
            pump: {into: body.line, displacement: 15 mL/rev, speed: {idle: 700 rpm}, efficiency: 1}
            parts:
              body:
                kind: casting
                passages: {line: {}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 550 kPa, port: 30 mm2}}
                leaks: [{between: [line, exhaust], area: 1.5 mm2}]
            gears: {G: {apply: []}}
            """, "leaky.yaml").Unit!;
        var gear = PressureStudy.Run(Assembly.DefaultOf(unit), PressureStudy.PointsOf(unit), ["G"]).Points[0].Gears[0];
        var density = 850 / (1 + (7e-4 * 75));
        var expected = 0.611 * 1.5e-6 * Math.Sqrt(2 * 1e3 * gear.LineKilopascals / density) * 6e4;
        Assert.Equal(10.5, gear.PumpLitresPerMinute, 9);
        Assert.Equal(expected, gear.Budget.Single(rate => rate.Element == "body:line~exhaust").LitresPerMinute, 0.01 * expected);
        Assert.Equal(10.5 - expected, gear.SpilledLitresPerMinute, 0.02);
        Assert.InRange(gear.LineKilopascals, 550, 560);
    }

    [Fact]
    public void Where_nothing_is_steady_no_number_is_printed()
    {
        var unit = Demo("rill");
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        flow.Balance.Pressure[flow.Flow.Pump] = 777_000;
        var state = new SteadyGear(flow.Network, flow.Flow, flow.Balance, new SteadyOutcome(false, 0.125, flow.Flow.Pump, 80));
        var gear = PressureStudy.GearOf(unit, "1", state);
        var point = new OperatingPoint("idle", 80, 700);
        var finding = PressureStudy.NoAnswer(unit.FindGear("1")!, point, gear);
        Assert.Equal("did-not-converge", finding.Rule);
        Assert.Contains("did not converge at body.line; 12.5 %", finding.Words(), StringComparison.Ordinal);
        var report = new PressureReport(Assembly.DefaultOf(unit), ["early"], unit.Taps, [new PressurePoint(point, [gear])], [], [finding]);
        var page = PressuresText.Of(report, detailed: true, TextOptions.Default);
        Assert.Contains("1: no answer; did not converge at body.line", page, StringComparison.Ordinal);
        Assert.DoesNotContain("777", page, StringComparison.Ordinal);
        var json = JsonText.Of(Documents.Of(report));
        Assert.DoesNotContain("777", json, StringComparison.Ordinal);
    }

    private static Unit Demo(string name) => CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
}
