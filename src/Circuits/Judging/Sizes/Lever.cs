using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Lever((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        if (!revision.Lever.Any(position => position.Ports.Any(port => port.Area is null))) return;
        Add(fitted, $"ports of {fitted.Part.Name}.lever", Defaults.SpoolPortArea, Dimension.Area, area =>
            revision with { Lever = [.. revision.Lever.Select(position => position with { Ports = Ports(position.Ports, area) })] });
    }
}
