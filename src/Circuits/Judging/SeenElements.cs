using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Judging;

/// <summary>
/// Writes down what solver and judge see of a network's elements. Each is taken apart into all of its members; those that are left out (_) change
/// no answer, for the reason that stands beside them.
/// </summary>
/// <param name="names">Numbers of names.</param>
/// <param name="bytes">Takes what is written down.</param>
internal sealed partial class SeenElements(NameNumbers names, ByteList bytes) : IElementKinds<Network>
{
    public void Openings(Network network) { } // links, which are added gear by gear

    public void Lever(Network network) { } // links; the gear says where it stands

    public void Restrictions(Network network) { } // links

    public void Leaks(Network network) { } // links

    private void Add(ImmutableArray<Signal> signals)
    {
        bytes.Add(signals.Length);
        foreach (var (node, factor) in signals)
        {
            bytes.Add(node);
            bytes.Add(factor);
        }
    }
}
