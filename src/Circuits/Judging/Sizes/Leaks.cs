using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Leaks((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var item in revision.Leaks.Where(item => item.Shape.Area is null))
        {
            Add(fitted, $"leak between {item.A.Name} and {item.B.Name}", Defaults.LeakArea, Dimension.Area, area =>
                revision with { Leaks = revision.Leaks.Replace(item, item with { Shape = new Shape.Cutout(new Area(area)) }) });
        }
    }
}
