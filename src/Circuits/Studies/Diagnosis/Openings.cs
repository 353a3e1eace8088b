using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

internal sealed partial class NetworkPieces
{
    /// <summary>Openings, and every other link.</summary>
    public void Openings(Network network)
    {
        foreach (var link in network.Links.Where(link => link.Gate.Kind != GateKind.Shut))
        {
            // Two that are alike in everything count one by one: without one of them the last is missing.
            var words = FormattableString.Invariant($"{link.Kind} {link.Gate.Kind} {link.Gate.Position} {link.Element} {Name(link.A)} {Name(link.B)} {link.SquareMillimetres}");
            for (var copy = 0; !pieces.TryAdd(FormattableString.Invariant($"{words} {copy}"), Names([link.A, link.B])); copy++) ;
        }
    }
}
