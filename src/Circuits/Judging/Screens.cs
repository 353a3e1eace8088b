using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

internal sealed partial class SeenElements
{
    public void Screens(Network network)
    {
        foreach (var screen in network.Screens)
        {
            // No answer names it; what its mesh leaves open is a link, what its bypass does a regulator.
            var (_, from, to, bypass, _) = screen;
            bytes.Add(from);
            bytes.Add(to);
            bytes.Add(bypass);
        }
    }
}

internal sealed partial class PositionReports
{
    public void Screens(GearSolution state)
    {
        foreach (var screen in state.Network.Screens)
        {
            Stand stand = screen.Bypass >= 0 ? new Stand.Simple(state.Modes[screen.Bypass] == RegulatorModes.Relieving ? StandKind.BypassShut : StandKind.BypassOpen)
                : screen.Source.IsOut ? new Stand.Simple(StandKind.WithoutMesh)
                : screen.Source.Bypass is { Stuck: { } stuck } ? new Stand.StuckBypass(stuck)
                : new Stand.Simple(StandKind.WithoutBypass);
            Add(PositionKind.Screen, screen.Name, stand, screen.Source.Place);
        }
    }
}
