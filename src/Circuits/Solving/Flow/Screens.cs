using Circuits.Laws;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

internal sealed partial class FlowDrafter
{
    public void Screens(Network network) { } // a mesh is a link, its bypass a regulator

    /// <summary>A bypass feels the two sides of its mesh and nothing else.</summary>
    private void AddBypass(RegulatorElement bypass, int number) =>
        Add(FlowKind.BypassPort, bypass.From, bypass.Out, bypass.SquareMillimetres, number, 0, -1, []);
}

internal sealed partial class PistonDrafter
{
    public void Screens(Network network) { } // hold no oil that counts
}

internal sealed partial class FlowBalance
{
    private (double Open, double ByDifference) Bypass(FlowElement element, double difference)
    {
        var port = SpringBypass.Open(difference, -flow.Regulators[element.Element].Spring, FlowDefaults.BypassBand * 1e3);
        return (port.Area, port.Slope);
    }
}
