using Circuits.Model;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>Tells the line regulator, which holds the pump's oil, from reliefs on other passages.</summary>
internal static class LineRegulators
{
    /// <summary>
    /// The nodes whose spilling regulators hold line pressure: those of the pump's circuit that its oil reaches through
    /// fixed openings, or, when that circuit has none at all, the nearest one reached. Any other is a relief.
    /// </summary>
    public static HashSet<int> FindHolds(Draft draft, int pump)
    {
        if (pump < 0) return [];
        var held = draft.Parts
            .SelectMany(pair => pair.Revision.Regulators).OfType<Regulator.Spilling>()
            .Select(regulator => draft.Passages.GetValueOrDefault(regulator.Holds.Name, -1)).Where(node => node > 0).ToHashSet();
        var reached = Reached(draft, pump).ToList();
        var own = held.Where(node => node == pump || draft.Nodes[node].Circuit == draft.Nodes[pump].Circuit).ToList();
        if (own.Count > 0) return [.. own.Where(reached.Contains)];
        var nearest = reached.Find(held.Contains);
        return nearest == 0 ? [] : [nearest];
    }

    /// <summary>Reports a pump whose oil no line regulator holds.</summary>
    public static void Check(Draft draft, int pump, List<RegulatorElement> regulators)
    {
        if (pump < 0) return;
        if (regulators.Exists(regulator => regulator.Kind == RegulatorKind.Line)) return;
        var unit = draft.Assembly.Unit;
        draft.Findings.Add(UnregulatedLine.Rule.At(
            unit.Pump!.Place, $"no spilling regulator is reached from {unit.Pump.Into.Name}: nothing limits line pressure"));
        if (unit.Pump.Relief is null)
        {
            draft.Assume(
                $"assumed {Stacking.Defaults.PumpRelief:0} kPa line pressure: no regulator is reached and the pump has no relief given",
                unit.Pump.Place);
        }
    }

    /// <summary>Nodes that fixed openings join to <paramref name="start"/>, nearest first.</summary>
    private static IEnumerable<int> Reached(Draft draft, int start)
    {
        var restrictions = draft.Parts.SelectMany(pair => pair.Revision.Restrictions)
            .Select(restriction => (A: draft.Passages.GetValueOrDefault(restriction.A.Name, -1), B: draft.Passages.GetValueOrDefault(restriction.B.Name, -1)))
            .Where(pair => pair.A > 0 && pair.B > 0);
        var neighbours = draft.Edges
            .Where(edge => edge.Gate.Kind == GateKind.Open && edge.Kind == LinkKind.Opening).Select(edge => (edge.A, edge.B))
            .Concat(restrictions)
            .SelectMany(pair => new[] { (From: pair.A, To: pair.B), (From: pair.B, To: pair.A) })
            .ToLookup(pair => pair.From, pair => pair.To);
        var seen = new HashSet<int> { start, 0 };
        var queue = new Queue<int>([start]);
        while (queue.TryDequeue(out var node))
        {
            yield return node;
            foreach (var next in neighbours[node])
            {
                if (seen.Add(next)) queue.Enqueue(next);
            }
        }
    }
}
