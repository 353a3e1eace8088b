using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Solenoids((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var solenoid in revision.Solenoids.Where(solenoid => solenoid.PortArea is null))
        {
            Add(fitted, $"ports of {fitted.Part.Name}.{solenoid.Name}", Defaults.SolenoidPortArea, Dimension.Area, area =>
                revision with { Solenoids = [.. revision.Solenoids.Select(item => item.Name == solenoid.Name ? item with { PortArea = new Area(area) } : item)] });
        }
    }
}
