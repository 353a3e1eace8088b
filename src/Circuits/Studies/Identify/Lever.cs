using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class Unseen
{
    public void Lever(Revision revision)
    {
        foreach (var position in revision.Lever) Add($"manual valve in {position.Name}", Of(position.Ports));
    }
}
