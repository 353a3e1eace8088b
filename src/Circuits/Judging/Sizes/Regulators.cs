using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Regulators((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var regulator in revision.Regulators.Where(regulator => regulator.PortArea is null))
        {
            Add(fitted, $"ports of {fitted.Part.Name}.{regulator.Name}", Defaults.RegulatorPortArea, Dimension.Area, area =>
                revision with { Regulators = [.. revision.Regulators.Select(item => item.Name == regulator.Name ? item with { PortArea = new Area(area) } : item)] });
        }
    }
}
