using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Restrictions((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var item in revision.Restrictions.Where(item => item.Shape.Area is null))
        {
            Add(fitted, $"restriction between {item.A.Name} and {item.B.Name}", Defaults.OpeningArea, Dimension.Area, area =>
                revision with { Restrictions = revision.Restrictions.Replace(item, item with { Shape = new Shape.Cutout(new Area(area)) }) });
        }
    }
}
