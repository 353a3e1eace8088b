using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class Unseen
{
    public void Leaks(Revision revision)
    {
        foreach (var leak in revision.Leaks) Add($"leak {leak.A.Name}~{leak.B.Name}", Of(leak.Shape));
    }
}
