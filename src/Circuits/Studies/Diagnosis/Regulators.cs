using Circuits.Networks;

namespace Circuits.Studies.Diagnosis;

internal sealed partial class NetworkPieces
{
    public void Regulators(Network network)
    {
        foreach (var regulator in network.Regulators)
        {
            pieces[FormattableString.Invariant($"{regulator.Name} {regulator.Kind} {regulator.Spring} {regulator.SquareMillimetres} {Words(regulator.SetBy)} {regulator.Solenoid?.Fault}")] =
                Names([regulator.From, regulator.Out, regulator.To, .. regulator.SetBy.Select(signal => signal.Node)]);
        }
    }
}
