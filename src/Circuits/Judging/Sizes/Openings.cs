using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Openings((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var opening in revision.Openings.Where(opening => opening.Shape.Area is null))
        {
            Add(fitted, $"opening {fitted.Part.Name}@{string.Join('-', opening.At.Select(at => at.Name))}", Defaults.OpeningArea, Dimension.Area, area =>
                revision with { Openings = revision.Openings.Replace(opening, opening with { Shape = new Shape.Cutout(new Area(area)) }) });
        }
    }
}
