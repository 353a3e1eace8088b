using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A two-position spool.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="MovedBy">Signals that move it, in newtons per kilopascal.</param>
/// <param name="HeldBy">Signals that hold it, in newtons per kilopascal.</param>
/// <param name="Springs">Net spring force that holds it, newtons.</param>
/// <param name="Stuck">Where it has stuck; null while it moves freely.</param>
/// <param name="Source">The model's valve.</param>
public sealed record SpoolElement(
    string Name, ImmutableArray<Signal> MovedBy, ImmutableArray<Signal> HeldBy, double Springs, StuckAt? Stuck, Valve Source)
{
    internal SpoolElement Renumbered(NewNumbers numbers)
    {
        var (name, movedBy, heldBy, springs, stuck, source) = this;
        return new SpoolElement(name, Signal.Renumbered(movedBy, numbers), Signal.Renumbered(heldBy, numbers), springs, stuck, source);
    }
}

public sealed partial class Network
{
    /// <summary>Two-position spools.</summary>
    public required ImmutableArray<SpoolElement> Spools { get; init; }
}

internal sealed partial class Draft
{
    public List<SpoolElement> Spools { get; } = [];
}

internal sealed partial class ElementDrafter
{
    public void Valves(Owner owner)
    {
        foreach (var valve in owner.Revision.Valves) AddValve(owner, valve);
    }

    private void AddValve(Owner owner, Valve valve)
    {
        var name = $"{owner.Part.Name}.{valve.Name}";
        var number = draft.Spools.Count;
        owner.Places[name] = valve.Place;
        if (valve.Stuck is StuckAt.Midway or StuckAt.MidwayShut)
        {
            AddMidway(owner, valve, name);
        }
        else
        {
            AddPorts(owner, LinkKind.ValvePort, valve.Rest, new Gate(GateKind.Valve, number, 0), name, AtRest);
            AddPorts(owner, LinkKind.ValvePort, valve.Moved, new Gate(GateKind.Valve, number, 1), name, Moved);
        }

        var springs = Springs(valve.HeldBy) - Springs(valve.MovedBy);
        draft.Spools.Add(new SpoolElement(name, Signals(name, valve, valve.MovedBy), Signals(name, valve, valve.HeldBy), springs, valve.Stuck, valve));
    }

    /// <summary>
    /// Between its positions a spool either leaves every port open a little or shuts them all. Its laps say which; without
    /// them it is for the one who asks to say.
    /// </summary>
    private void AddMidway(Owner owner, Valve valve, string name)
    {
        var detail = StuckText.Of(valve.Stuck!.Value);
        ImmutableArray<Port> ports = [.. valve.Rest, .. valve.Moved];
        if (valve.Stuck == StuckAt.Midway && valve.OpenMidway is not <= 0)
        {
            if (valve.OpenMidway is null)
            {
                draft.Assume(
                    $"assumed that {name}, stuck midway, leaves each of its ports {new Share(Defaults.MidwayShare)} of its area: its laps are not given",
                    valve.Place);
            }

            AddPorts(owner, LinkKind.ValvePort, ports, Gate.Open, name, detail, valve.OpenMidway ?? Defaults.MidwayShare);
            return;
        }

        foreach (var port in ports)
        {
            var nodes = port.Passages.Select(passage => Resolve(passage, name, "joins")).Where(node => node >= 0).ToList();
            for (var i = 1; i < nodes.Count; i++) AddShut(owner, nodes[0], nodes[i], name, detail, port.Place);
        }
    }

    private static double Springs(ImmutableArray<SpoolForce> forces) =>
        forces.OfType<SpoolForce.Spring>().Sum(spring => spring.Preload.Newtons);

    private ImmutableArray<Signal> Signals(string name, Valve valve, ImmutableArray<SpoolForce> forces)
    {
        var signals = ImmutableArray.CreateBuilder<Signal>();
        foreach (var signal in forces.OfType<SpoolForce.Signal>())
        {
            if (signal.Area is null)
                draft.Assume($"assumed {new Area(Defaults.SignalArea)} for the signal lands of {name}: no area given", valve.Place);
            var area = signal.Area?.SquareMillimetres ?? Defaults.SignalArea;
            // 1 kPa on 1 mm2 is 0.001 N.
            signals.Add(new Signal(Resolve(signal.From, name, "is moved by"), area / 1000));
        }

        return signals.ToImmutable();
    }
}
