using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

/// <summary>Everything that a network has, in words that tell it from anything else, with the nodes that it lies at.</summary>
internal sealed partial class NetworkPieces : IElementKinds<Network>
{
    private readonly Dictionary<string, string[]> pieces = [];
    private readonly Network network;

    private NetworkPieces(Network network) => this.network = network;

    /// <summary>The pieces of a network.</summary>
    /// <param name="network">The network.</param>
    public static Dictionary<string, string[]> Of(Network network)
    {
        var all = new NetworkPieces(network);
        all.Each(network);
        return all.pieces;
    }

    public void Passages(Network network) { } // where the others lie

    public void Solenoids(Network network) { } // those that hold a pressure are regulators; the ports of others are links

    public void Lever(Network network) { } // its ports are links

    public void Restrictions(Network network) { } // links

    public void Leaks(Network network) { } // links

    public void Screens(Network network) { } // a mesh is a link, its bypass a regulator

    public void Accumulators(Network network) { } // keep oil under pressure, and let none pass

    private string Name(int node) => node < 0 ? "" : network.Nodes[node].Name;

    private string Words(ImmutableArray<Signal> signals) => string.Join(',', signals.Select(signal => FormattableString.Invariant($"{Name(signal.Node)}*{signal.Factor}")));

    private string[] Names(IEnumerable<int> nodes) => [.. nodes.Where(node => node > 0).Select(Name).Distinct()];
}
