using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Regulators(Network network)
    {
        foreach (var regulator in network.Regulators)
        {
            // No answer names it; what a solenoid is told the gear says; of several outlets the answer takes the first; a spool's slope is for flow.
            var (_, kind, from, @out, to, spring, setBy, area, _, _, _, _) = regulator;
            bytes.Add((int)kind);
            bytes.Add(from);
            bytes.Add(@out);
            bytes.Add(to);
            bytes.Add(spring);
            bytes.Add(area);
            Add(setBy);
        }
    }
}

internal sealed partial class PositionReports
{
    public void Regulators(GearSolution state)
    {
        var network = state.Network;
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            // A screen tells of its bypass itself.
            var regulator = network.Regulators[i];
            if (regulator.Kind == RegulatorKind.Bypass) continue;
            Add(regulator.Solenoid is null ? PositionKind.Regulator : PositionKind.Solenoid, regulator.Name, StandOf(state, i), regulator.Place);
        }

        foreach (var stuck in network.Stuck)
        {
            if (!network.Regulators.Any(regulator => regulator.Name == stuck.Name) && !network.Screens.Any(screen => stuck.Name == $"{screen.Name}:bypass")) Add(PositionKind.Regulator, stuck.Name, new Stand.StuckRegulator(stuck.How), stuck.Place);
        }
    }

    /// <summary>A line regulator that stands below this share of its set pressure lets nothing go: the pump gives no more.</summary>
    private const double Reached = 0.95;

    private static Stand StandOf(GearSolution state, int regulator)
    {
        var element = state.Network.Regulators[regulator];
        if (element.Kind == RegulatorKind.Line && state.PressureAt(element.Out) < Reached * state.Sets[regulator]) return new Stand.Simple(StandKind.Closed);
        if (element.Kind == RegulatorKind.Line || state.Modes[regulator] == RegulatorModes.Holding) return new Stand.Holds(new Pressure(state.Sets[regulator]));
        return new Stand.Simple(
            state.Modes[regulator] == RegulatorModes.Relieving ? StandKind.Drains
            : element.Kind == RegulatorKind.Relief ? StandKind.Closed
            : StandKind.OpenToSupply);
    }
}
