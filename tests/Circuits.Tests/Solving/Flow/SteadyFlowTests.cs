using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>Steady flow against worked orifice networks, and against the static answer where both apply.</summary>
public sealed class SteadyFlowTests
{
    /// <summary>T: 10 bar through 1.0 mm to a node that drains by 0.8 and 1.2 mm. Computed from the orifice law by hand: 1.877440673 bar.</summary>
    [Fact]
    public void A_feed_with_two_drains()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source node",
            "restrictions: [{between: [source, node], hole: 1.0 mm}, {between: [node, exhaust], hole: 0.8 mm}, {between: [node, exhaust], hole: 1.2 mm}]",
            "signals: {body.source: 1000 kPa}").Assembly());
        var state = flow.Solve(FlowCase.Thin);
        Assert.True(state.Converged);
        Assert.Equal(187744.0673, state.PressureAt(flow.Node("node")), 0.001);
        Assert.Equal([1.258735, .387303, .871432], state.Elements.Select(element => Math.Round(element.Rate * 6e4, 6)));
    }

    /// <summary>What is no number is no answer: neither a pressure to begin with, nor a pump's flow.</summary>
    [Fact]
    public void What_is_no_number_does_not_converge()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source node other", "restrictions: [{between: [source, node], hole: 1.0 mm}, {between: [node, other], hole: 0.8 mm}, {between: [other, exhaust], hole: 1 mm}]",
            "signals: {body.source: 1000 kPa}").Assembly());
        flow.Balance.Set(flow.Static().Inputs, FlowCase.Thin with { Density = double.NaN });
        var outcome = new SteadyFlow(flow.Flow, flow.Balance).Solve();
        Assert.False(outcome.Converged);
        Assert.True(double.IsFinite(outcome.Residual));
    }

    /// <summary>Bridge: S-a 1.0, S-b 1.2, a-b 0.8, a-0 1.2, b-0 1.0 mm from 10 bar. Computed: 4.44087103 and 5.55912897 bar.</summary>
    [Fact]
    public void A_bridge()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source a b",
            "restrictions: [{between: [source, a], hole: 1.0 mm}, {between: [source, b], hole: 1.2 mm}, {between: [a, b], hole: 0.8 mm}, "
            + "{between: [a, exhaust], hole: 1.2 mm}, {between: [b, exhaust], hole: 1.0 mm}]",
            "signals: {body.source: 1000 kPa}").Assembly());
        var state = flow.Solve(FlowCase.Thin);
        Assert.True(state.Converged);
        Assert.Equal(444087.103, state.PressureAt(flow.Node("a")), 0.001);
        Assert.Equal(555912.897, state.PressureAt(flow.Node("b")), 0.001);
        Assert.Equal([1.041337, 1.340246, -.298909, 1.340246, 1.041337], state.Elements.Select(element => Math.Round(element.Rate * 6e4, 6)));
    }

    /// <summary>
    /// The pump gives 5 L/min into a hole of 3 mm: K = 0.611 A sqrt(2 / rho), p = (Q / K)^2, 157 kPa, though the line regulator is set to 800. The outlet of
    /// a regulator set to 600, and the one behind it set to 400, end where line is, not where the static answer has them.
    /// </summary>
    [Fact]
    public void An_outlet_never_stands_above_the_feed_that_filled_it()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "line a b c",
            "regulators:\n  main: {holds: line, spills-to: exhaust, spring: 800 kPa}\n  first: {from: line, out: a, spring: 600 kPa}\n  second: {from: a, out: b, spring: 400 kPa}\n"
            + "restrictions: [{between: [line, exhaust], hole: 3 mm}, {between: [b, c], hole: 1 mm}]",
            "", "pump: {into: body.line}").Assembly());
        var state = flow.Solve(FlowCase.Thin with { Pump = new PumpCurve(5e-3 / 60, 2e6) });
        Assert.True(state.Converged);
        var line = Math.Pow(5e-3 / 60 / (0.611 * Math.PI / 4 * 9e-6), 2) * 850 / 2;
        foreach (var passage in new[] { "line", "a", "b", "c" }) Assert.Equal(line, state.PressureAt(flow.Node(passage)), 50.0);
    }

    [Theory]
    [InlineData("rill", 8, 1)]
    [InlineData("weir", 8, 1)]
    [InlineData("firth", 25, 5)] // no part has a multiple of five revisions, so every revision of each is met
    public void It_agrees_with_the_static_answer_where_both_apply(string name, double litresPerMinute, int every)
    {
        // Enough for converter and lubrication, and little enough that holes on the pump's own way take next to nothing off it.
        var conditions = FlowCase.Pumped with { Pump = new PumpCurve(litresPerMinute / 6e4, 2.2e6) };
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var compared = Assemblies(unit).Where((_, index) => index % every == 0).AsParallel().Select(assembly => Compare(assembly, conditions)).ToList();
        var (together, apart, gone) = (compared.Sum(each => each.Together), compared.Sum(each => each.Apart), compared.SelectMany(each => each.Gone).ToList());
        Assert.True(gone.Count == 0, $"{gone.Count} of {together}, {apart} apart\n{string.Join('\n', gone.Take(30))}");
        Assert.True(together > 2 * apart, $"{together} compared, {apart} apart");
    }

    private static (int Together, int Apart, List<string> Gone) Compare(Assembly assembly, FlowConditions conditions)
    {
        var (together, apart, gone) = (0, 0, new List<string>());
        var flow = new FlowCase(assembly);
        foreach (var gear in flow.Gears.Where(gear => gear.Solution.Settled && gear.Others.IsEmpty))
        {
            var state = flow.Steady.Solve(gear.Solution, conditions);
            if (!state.Converged || !SpoolsStandAs(flow, state, gear.Solution) || !LineStandsAs(state, gear.Solution))
            {
                apart++;
                continue;
            }

            together++;
            foreach (var node in flow.Network.Nodes)
            {
                var (expected, actual) = (gear.Solution.PressureAt(node.Index), state.PressureAt(node.Index) / 1e3);
                if (Math.Abs(expected - actual) > Math.Max(30, 0.06 * gear.Solution.Line))
                    gone.Add($"{string.Join(' ', assembly.Choice.Select(pair => pair.Value))} {gear.Gear.Name} {node.Name}: static {expected:0.0}, steady {actual:0.0}");
            }
        }

        return (together, apart, gone);
    }

    /// <summary>
    /// Held over by its past, the 2-3 valve of the four-speed has 29.4 N of governor and 0.01 of third oil against 32 N; with a stiffer spring than its own, a rate of
    /// 1.2 N/mm that makes 6 N over its travel, it cannot stay there. Third oil
    /// comes from second, at 530 kPa and less: 2.7 N are not half of the travel, so it drains, and the valve falls back. Both its ports are
    /// shut at 562 kPa, which balances but is above everything that could feed it: no place to stand.
    /// </summary>
    [Fact]
    public void A_spool_does_not_hang_where_nothing_brings_it()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "weir", "weir.yaml")).Unit!;
        var own = Assembly.DefaultOf(unit);
        var flow = new FlowCase(Assembly.Of(unit, [.. own.Revisions.Select(revision => revision with { Valves = [.. revision.Valves.Select(Stiff)] })]));
        var state = flow.Solve(FlowCase.Pumped, "3-held");
        Assert.True(state.Converged);
        Assert.Equal(0, state.TravelOf(flow.Network.Spools.Select(spool => spool.Name).ToList().IndexOf("body.two-three")));
        Assert.Equal(0, state.PressureAt(flow.Node("third")), 1.0);
    }

    private static Valve Stiff(Valve valve) => valve with
    {
        HeldBy = [.. valve.HeldBy.Select(force => force is SpoolForce.Spring spring ? spring with { Rate = new Circuits.Quantities.SpringRate(1.2) } : force)],
    };

    private static IEnumerable<Assembly> Assemblies(Unit unit)
    {
        IEnumerable<Revision[]> all = [[]];
        foreach (var part in unit.Parts) all = all.SelectMany(chosen => part.Revisions.Select(revision => chosen.Append(revision).ToArray()));
        return all.Select(chosen => Assembly.Of(unit, [.. chosen]));
    }

    private static bool SpoolsStandAs(FlowCase flow, SteadyGear state, GearSolution rest)
    {
        for (var i = 0; i < flow.Network.Spools.Length; i++)
        {
            if (Math.Abs(state.TravelOf(i) - (rest.Moved[i] ? 1 : 0)) > 1e-9) return false;
        }

        return true;
    }

    /// <summary>
    /// The static answer lets the pump give enough, and every line regulator spill. Here they do so only above their own set
    /// pressure: not while another holds line lower.
    /// </summary>
    private static bool LineStandsAs(SteadyGear state, GearSolution rest)
    {
        var spills = state.Elements
            .Where(spill => spill.Element.Kind == FlowKind.SpillPort && rest.Network.Regulators[spill.Element.Element].Kind == RegulatorKind.Line)
            .ToList();
        return Math.Abs((state.PressureAt(rest.Network.Pump) / 1e3) - rest.Line) <= 0.05 * rest.Line
            && spills.Sum(spill => spill.Rate) > 0.2 * state.Pumped
            && spills.TrueForAll(spill => spill.Element.B == 0 || spill.Element.Position > 0 || spill.Rate > 0);
    }
}
