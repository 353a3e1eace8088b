using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>
/// Recognizes what a unit needs where its file does not say: passages through which, in the matched set, oil goes on to sump by fixed openings
/// all the time. Such are converter, cooler, lubrication, balance chambers.
/// </summary>
internal static class NeedFinder
{
    /// <summary>Less than this share of the pump's oil is a bleed, not a supply.</summary>
    public const double LeastShare = 0.01;

    /// <summary>From this share of line pressure on a passage counts as line itself.</summary>
    private const double Line = 0.95;

    /// <summary>What the file says that the unit needs, else what is recognized in a matched set.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="matched">The matched set at the unit's conditions, or null.</param>
    /// <param name="points">The conditions that judge gears, by number.</param>
    public static ImmutableArray<UnitNeed> Of(Unit unit, FlowAnswers? matched, ImmutableArray<int> points)
    {
        if (!unit.Needs.IsEmpty)
            return [.. unit.Needs.Select(need => new UnitNeed(need.Name, [need.At.Name], need.Place) { Given = need })];
        if (matched is null || points.IsEmpty) return [];
        var (network, flow) = (matched.Network, matched.Flow);
        var found = new SortedDictionary<int, (string Drain, List<string> Gears)>();
        for (var gear = 0; gear < unit.Gears.Length; gear++)
        {
            // What flows at one condition alone is what is left over there.
            var always = new SortedDictionary<int, string>();
            foreach (var point in points)
            {
                var here = new SortedDictionary<int, string>();
                if (matched.In(gear, point) is { Converged: true, Pumped: > 0 } settled) Follow(network, flow, settled, here);
                if (point == points[0]) always = here;
                else foreach (var cell in always.Keys.Except(here.Keys).ToList()) always.Remove(cell);
            }

            foreach (var (cell, drain) in always)
            {
                if (!found.TryGetValue(cell, out var known)) found[cell] = known = (drain, []);
                known.Gears.Add(unit.Gears[gear].Name);
            }
        }

        return [.. found.Select(pair => Need(network, flow, pair.Key, pair.Value.Drain, pair.Value.Gears)).OfType<UnitNeed>()];
    }

    private static UnitNeed? Need(Network network, FlowNetwork flow, int cell, string drain, List<string> gears)
    {
        ImmutableArray<Node> passages = [.. network.Nodes.Where(node => node.Kind == NodeKind.Passage && flow.CellOf[node.Index] == cell)];
        if (passages.IsEmpty) return null;
        ImmutableArray<PassageName> names = [.. passages.Select(node => network.Passages.First(pair => pair.Value == node.Index).Key)];
        return new UnitNeed(passages[0].Name, names, passages[0].Place) { DrainsBy = drain, Gears = [.. gears] };
    }

    /// <summary>From the sump against the stream, by fixed openings, up to where a valve or line feeds.</summary>
    private static void Follow(Network network, FlowNetwork flow, SteadyGear gear, SortedDictionary<int, string> found)
    {
        var least = LeastShare * gear.Pumped;
        var seen = new HashSet<int> { 0 };
        var waiting = new Queue<int>([0]);
        while (waiting.TryDequeue(out var cell))
        {
            foreach (var (element, rate) in gear.Elements)
            {
                var (from, to) = rate >= 0 ? (element.A, element.B) : (element.B, element.A);
                if (to != cell || Math.Abs(rate) < least || !IsFixed(network, element) || IsSource(network, flow, gear, from) || !seen.Add(from)) continue;
                found.TryAdd(from, element.Link >= 0 ? network.Links[element.Link].Element : flow.Names[to]);
                waiting.Enqueue(from);
            }
        }
    }

    private static bool IsFixed(Network network, FlowElement element) => element.Kind switch
    {
        FlowKind.Track => true,
        FlowKind.Orifice or FlowKind.Own => element.Gate.Kind == GateKind.Open && element.Link >= 0 && network.Links[element.Link].Kind is LinkKind.Opening or LinkKind.Restriction,
        _ => false,
    };

    /// <summary>Line, a clutch, and what a solenoid holds are no needs of this kind.</summary>
    private static bool IsSource(Network network, FlowNetwork flow, SteadyGear gear, int cell) =>
        cell == 0 || cell == flow.Pump
        || (flow.Pump >= 0 && gear.PressureOf(cell) >= Line * gear.PressureOf(flow.Pump))
        || flow.Pistons.Any(piston => piston.Clutch >= 0 && (piston.Apply == cell || piston.Release == cell))
        || network.Regulators.Any(regulator => regulator.Solenoid is not null && flow.CellOf[regulator.Out] == cell);
}
