using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Valves((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var valve in revision.Valves)
        {
            var name = $"{fitted.Part.Name}.{valve.Name}";
            if (valve.Rest.Concat(valve.Moved).Any(port => port.Area is null))
                Add(fitted, $"ports of {name}", Defaults.SpoolPortArea, Dimension.Area, area => Each(item => item with { Rest = Ports(item.Rest, area), Moved = Ports(item.Moved, area) }));
            if (valve.MovedBy.Concat(valve.HeldBy).OfType<SpoolForce.Signal>().Any(signal => signal.Area is null))
                Add(fitted, $"signal lands of {name}", Defaults.SignalArea, Dimension.Area, area => Each(item => item with { MovedBy = Lands(item.MovedBy, area), HeldBy = Lands(item.HeldBy, area) }));

            Revision Each(Func<Valve, Valve> rewrite) =>
                revision with { Valves = [.. revision.Valves.Select(item => item.Name == valve.Name ? rewrite(item) : item)] };
        }
    }

    private static ImmutableArray<Port> Ports(ImmutableArray<Port> ports, double area) =>
        [.. ports.Select(port => port.Area is null ? port with { Area = new Area(area) } : port)];

    private static ImmutableArray<SpoolForce> Lands(ImmutableArray<SpoolForce> forces, double area) =>
        [.. forces.Select(force => force is SpoolForce.Signal { Area: null } signal ? signal with { Area = new Area(area) } : force)];
}
