using Circuits.Stacking;

namespace Circuits.Networks;

internal sealed partial class ElementDrafter
{
    public void Leaks(Owner owner)
    {
        foreach (var item in owner.Revision.Leaks)
            AddHole(owner, LinkKind.Leak, item.A, item.B, item.Shape, Defaults.LeakArea, item.Place);
    }
}
