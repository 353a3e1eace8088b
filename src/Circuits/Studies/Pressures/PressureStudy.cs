using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;
using Circuits.Solving.Rules;
using Circuits.Studies.Sensitivity;

namespace Circuits.Studies.Pressures;

/// <summary>Steady pressures and flows, gear by gear, under given conditions.</summary>
public static class PressureStudy
{
    private const double LitresPerMinute = 6e4;

    /// <summary>A flow below this share of the pump's is not told.</summary>
    private const double LeastShare = 1e-4;

    /// <summary>A missing size that moves no pressure by more than this, kPa, does not matter.</summary>
    private const double LeastKilopascals = 1;

    /// <summary>The conditions that a unit's file speaks of: its working temperature, at each speed of its pump.</summary>
    /// <param name="unit">The unit.</param>
    public static ImmutableArray<OperatingPoint> PointsOf(Unit unit)
    {
        var celsius = OilOfUnit.Temperature(unit, []);
        return [.. SpeedsOf(unit).Select(speed => new OperatingPoint(speed.Key, celsius, speed.Value))];
    }

    /// <summary>The pump's speeds by name, rpm; those assumed when the file names none.</summary>
    /// <param name="unit">The unit.</param>
    public static ImmutableArray<KeyValuePair<string, double>> SpeedsOf(Unit unit) => unit.Pump is { Speeds.IsEmpty: false } pump
        ? [.. pump.Speeds.Select(speed => KeyValuePair.Create(speed.Key, speed.Value.RevolutionsPerMinute))]
        : [KeyValuePair.Create("idle", FlowDefaults.IdleSpeed), KeyValuePair.Create("road", FlowDefaults.RoadSpeed)];

    /// <summary>Solves an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="points">The conditions.</param>
    /// <param name="gears">The gears asked for.</param>
    public static PressureReport Run(Assembly assembly, IReadOnlyList<OperatingPoint> points, IReadOnlyCollection<string> gears)
    {
        var unit = assembly.Unit;
        var network = NetworkBuilder.Build(assembly);
        var solved = SolvedAssembly.Of(Plan.Of(network));
        var steady = new SteadyAssembly(network);
        List<Assumption> assumptions = [.. network.Assumptions, .. steady.Assumptions];
        if (unit.Fluid?.Temperature is null) OilOfUnit.Temperature(unit, assumptions);
        if (unit.Pump is { Speeds.IsEmpty: true } pump)
            assumptions.Add(new Assumption($"assumed {new Speed(FlowDefaults.IdleSpeed)} at idle and {new Speed(FlowDefaults.RoadSpeed)} on the road: no speed given", pump.Place));
        var findings = new List<Finding>(network.Findings);
        var answers = ImmutableArray.CreateBuilder<PressurePoint>();
        foreach (var point in points)
        {
            var conditions = FlowConditions.Of(unit, point.Celsius, point.RevolutionsPerMinute, assumptions);
            answers.Add(new PressurePoint(point, [.. solved.Gears.Where(gear => gears.Contains(gear.Gear.Name)).Select(Answer)]));

            PressureGear Answer(SolvedGear gear)
            {
                var answer = GearOf(unit, gear.Gear.Name, steady.Solve(gear.Solution, conditions));
                if (!answer.Converged) findings.Add(NoAnswer(gear.Gear, point, answer) with { Assembly = assembly.Choice });
                return answer;
            }
        }

        return new PressureReport(
            assembly, [.. assembly.NearestOf(unit.Matched, set => Assembly.Of(unit, set)).Select(set => set.Name)], unit.Taps, answers.ToImmutable(), [.. assumptions.Select(assumption => assumption.Text).Distinct()], [.. findings]);
    }

    /// <summary>Which missing sizes matter to the gauge pressures, or to that of the pump where the file has no gauge ports.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="points">The conditions.</param>
    /// <param name="gears">The gears asked for.</param>
    public static ImmutableArray<SizeEffect> Matters(Assembly assembly, IReadOnlyList<OperatingPoint> points, IReadOnlyCollection<string> gears) =>
        SensitivityStudy.Rank(assembly, varied => Items(Run(varied, points, gears)), LeastKilopascals);

    /// <summary>What a steady state comes to; one that did not converge comes to no numbers.</summary>
    internal static PressureGear GearOf(Unit unit, string gear, SteadyGear state)
    {
        var answer = new PressureGear(gear, state.Converged, state.Residual, state.Worst);
        if (!state.Converged) return answer;
        var network = state.Network;
        var flows = state.Elements.Where(element => Math.Abs(element.Rate) > LeastShare * Math.Max(state.Pumped, 1e-6))
            .Select(element => RateOf(state, element)).ToList();
        return answer with
        {
            PumpLitresPerMinute = state.Pumped * LitresPerMinute,
            LineKilopascals = state.PressureAt(network.Pump) / 1e3,
            SpilledLitresPerMinute = Spilled(state) * LitresPerMinute,
            Taps = [.. unit.Taps.Select(tap => network.FindNode(tap.At.Name) is var node and >= 0 ? state.PressureAt(node) / 1e3 : (double?)null)],
            Passages = [.. network.Nodes.Where(node => node.Kind == NodeKind.Passage)
                .Select(node => new SteadyPressure(node.Name, state.PressureAt(node.Index) / 1e3))],
            Flows = [.. flows.OrderByDescending(flow => flow.LitresPerMinute)],
            Budget = [.. flows.Where(flow => flow.To == "exhaust").GroupBy(flow => (flow.Element, flow.From))
                .Select(group => group.First() with { LitresPerMinute = group.Sum(flow => flow.LitresPerMinute) })
                .OrderByDescending(flow => flow.LitresPerMinute)],
        };
    }

    internal static Finding NoAnswer(GearState gear, OperatingPoint point, PressureGear answer) => DidNotConverge.Rule.At(
        gear.Place,
        $"{gear.Name} at {new Temperature(point.Celsius)}, {new Speed(point.RevolutionsPerMinute)}: did not converge at {answer.Worst}; {new Share(answer.Residual)} of the pump's oil is unaccounted for") with
    {
        Gear = gear.Name,
    };

    private static ImmutableArray<AnswerItem> Items(PressureReport report) =>
        [.. report.Points.SelectMany(point => point.Gears.SelectMany(gear => Items(report, point.At, gear)))];

    private static ImmutableArray<AnswerItem> Items(PressureReport report, OperatingPoint at, PressureGear gear)
    {
        var where = report.Points.Length == 1 ? Phrase.Of($"{gear.Gear}") : Phrase.Of($"{gear.Gear}, {new Temperature(at.Celsius)}, {new Speed(at.RevolutionsPerMinute)}");
        if (report.Taps.IsEmpty) return [new AnswerItem(Phrase.Of($"pump in {where}"), gear.Converged ? gear.LineKilopascals : null)];
        return [.. report.Taps.Select((tap, i) => new AnswerItem(Phrase.Of($"{tap.Name} in {where}"), gear.Converged ? gear.Taps[i] : null))];
    }

    private static double Spilled(SteadyGear state) => state.Elements
        .Where(flow => flow.Element.Kind == FlowKind.SpillPort && state.Network.Regulators[flow.Element.Element].Kind == RegulatorKind.Line)
        .Sum(flow => flow.Rate);

    private static SteadyRate RateOf(SteadyGear state, ElementFlow flow)
    {
        var (element, rate) = flow;
        var (from, to) = rate >= 0 ? (element.A, element.B) : (element.B, element.A);
        var (name, place) = NameOf(state.Network, element);
        return new SteadyRate(name, state.NameOf(from), state.NameOf(to), Math.Abs(rate) * LitresPerMinute, place);
    }

    private static (string Name, Place Place) NameOf(Network network, FlowElement element)
    {
        if (element.Link >= 0) return (network.Links[element.Link].Element, network.Links[element.Link].Place);
        if (element.Kind == FlowKind.Track) return ("track", Place.None);
        return (network.Regulators[element.Element].Name, network.Regulators[element.Element].Place);
    }
}
