using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Solenoids(Network network)
    {
        foreach (var element in network.Switches)
        {
            // What the model's solenoid is told the gear says.
            var (name, _) = element;
            bytes.Add(names.Of(name));
        }
    }
}

internal sealed partial class PositionReports
{
    public void Solenoids(GearSolution state)
    {
        // Those that hold a pressure are among the regulators.
        for (var i = 0; i < state.Network.Switches.Length; i++)
        {
            var element = state.Network.Switches[i];
            Add(PositionKind.Solenoid, element.Name, new Stand.Simple(state.Inputs.Fed[i] ? StandKind.Feeds : StandKind.Drains), element.Source.Place);
        }
    }
}
