using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
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
        var held = new List<int>();
        foreach (var regulator in draft.Parts.SelectMany(pair => pair.Revision.Regulators))
        {
            if (regulator is Regulator.Spilling spilling && draft.Passages.TryGetValue(spilling.Holds.Name, out var node) && node > 0) held.Add(node);
        }

        var reached = Reached(draft, pump);
        var own = held.FindAll(node => node == pump || draft.Nodes[node].Circuit == draft.Nodes[pump].Circuit);
        if (own.Count > 0) return [.. own.FindAll(reached.Contains)];
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
            unit.Pump!.Place, unit.Pump.Relief is { } relief
                ? Phrase.Of($"no spilling regulator is reached from {unit.Pump.Into.Name}: only the pump's relief limits line pressure, at {relief}")
                : Phrase.Of($"no spilling regulator is reached from {unit.Pump.Into.Name}: nothing limits line pressure")));
        if (unit.Pump.Relief is null)
        {
            draft.Assume(
                $"assumed {new Pressure(Stacking.Defaults.PumpRelief)} line pressure: no regulator is reached and the pump has no relief given",
                unit.Pump.Place);
        }
    }

    /// <summary>Nodes that fixed openings join to <paramref name="start"/>, nearest first.</summary>
    private static List<int> Reached(Draft draft, int start)
    {
        // Two neighbours a pair, one after the other: the first of each node's, and the next after each.
        var pairs = FixedWays.Of(draft);
        var first = new int[draft.Nodes.Count];
        Array.Fill(first, -1);
        var next = new int[2 * pairs.Count];
        for (var i = next.Length - 1; i >= 0; i--)
        {
            var from = i % 2 == 0 ? pairs[i / 2].A : pairs[i / 2].B;
            next[i] = first[from];
            first[from] = i;
        }

        var seen = new bool[first.Length];
        seen[0] = seen[start] = true;
        var reached = new List<int> { start };
        for (var head = 0; head < reached.Count; head++)
        {
            for (var i = first[reached[head]]; i >= 0; i = next[i])
            {
                var to = i % 2 == 0 ? pairs[i / 2].B : pairs[i / 2].A;
                if (seen[to]) continue;
                seen[to] = true;
                reached.Add(to);
            }
        }

        return reached;
    }
}
