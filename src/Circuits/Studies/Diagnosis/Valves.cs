using System.Collections.Immutable;
using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

internal sealed partial class NetworkPieces
{
    public void Valves(Network network)
    {
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            ImmutableArray<Signal> signals = [.. spool.MovedBy, .. spool.HeldBy];
            var ports = network.Links.Where(link => link.Gate.Kind == GateKind.Valve && link.Gate.Element == i).SelectMany(link => new[] { link.A, link.B });
            pieces[FormattableString.Invariant($"{spool.Name} {spool.Springs} {spool.Stuck} {Words(spool.MovedBy)} {Words(spool.HeldBy)}")] =
                Names([.. ports, .. signals.Select(signal => signal.Node)]);
        }
    }
}
