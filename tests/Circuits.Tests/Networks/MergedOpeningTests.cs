using Circuits.Model;
using Circuits.Networks;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Networks;

/// <summary>An opening between two passages becomes one link, which is still that opening.</summary>
public sealed class MergedOpeningTests
{
    /// <summary>Through a slot oil that is cold flows by the slot's own hydraulic diameter, so flow has to be told its sides.</summary>
    [Fact]
    public void A_slot_that_joins_two_passages_keeps_its_sides()
    {
        var unit = new DemoUnit("weir/weir.yaml").Unit;
        var network = NetworkBuilder.Build(Assembly.Of(unit, unit.Matched.Single(set => set.Name == "middle")));
        var link = Assert.Single(network.Links, link => link.Element == "plate@22-23" && link.Gate.Kind == GateKind.Open);
        Assert.Equal(NodeKind.Passage, network.Nodes[link.A].Kind);
        Assert.Equal(NodeKind.Passage, network.Nodes[link.B].Kind);
        Assert.Equal(new Shape.Slot(new(3), new(15)), link.Shape);
        Assert.Equal(45, link.SquareMillimetres, 1e-9); // its own area, by whatever contacts oil goes in and out
    }
}
