using Circuits.Model;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>Tells the line regulator, which holds the pump's oil, from reliefs on other passages.</summary>
internal static class LineRegulators
{
    /// <summary>
    /// The nodes whose spilling regulators hold line pressure: those of the pump's circuit, or, when there is none, the
    /// nearest one that is reached from the pump through fixed openings.
    /// </summary>
    public static HashSet<int> FindHolds(Draft draft, int pump)
    {
        if (pump < 0) return [];
        var held = draft.Parts
            .SelectMany(pair => pair.Revision.Regulators).OfType<Regulator.Spilling>()
            .Select(regulator => draft.Passages.GetValueOrDefault(regulator.Holds.Name, -1)).Where(node => node > 0).ToHashSet();
        var own = held.Where(node => node == pump || draft.Nodes[node].Circuit == draft.Nodes[pump].Circuit).ToHashSet();
        if (own.Count > 0) return own;
        var nearest = Reached(draft, pump).FirstOrDefault(held.Contains, -1);
        return nearest < 0 ? [] : [nearest];
    }

    /// <summary>A line regulator that the pump's oil does not reach regulates nothing.</summary>
    public static void Check(Draft draft, int pump, List<RegulatorElement> regulators)
    {
        if (pump < 0) return;
        var reached = Reached(draft, pump).ToHashSet();
        for (var i = 0; i < regulators.Count; i++)
        {
            if (regulators[i].Kind == RegulatorKind.Line && !reached.Contains(regulators[i].Out))
                regulators[i] = regulators[i] with { Kind = RegulatorKind.Relief };
        }

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
        var neighbours = draft.Edges
            .Where(edge => edge.Gate.Kind == GateKind.Open && edge.Kind is LinkKind.Opening or LinkKind.Restriction)
            .SelectMany(edge => new[] { (From: edge.A, To: edge.B), (From: edge.B, To: edge.A) })
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
