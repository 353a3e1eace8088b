using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A switching solenoid.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Source">The model's solenoid.</param>
public sealed record SwitchElement(string Name, Solenoid Source);

public sealed partial class Network
{
    /// <summary>Switching solenoids.</summary>
    public required ImmutableArray<SwitchElement> Switches { get; init; }
}

internal sealed partial class Draft
{
    public List<SwitchElement> Switches { get; } = [];
}

internal sealed partial class ElementDrafter
{
    public void Solenoids(Owner owner)
    {
        foreach (var solenoid in owner.Revision.Solenoids) AddSolenoid(owner, solenoid);
    }

    private void AddSolenoid(Owner owner, Solenoid solenoid)
    {
        var name = $"{owner.Part.Name}.{solenoid.Name}";
        var area = PortArea(solenoid.PortArea, Defaults.SolenoidPortArea, name, solenoid.Place);
        var nodes = (From: Resolve(solenoid.Feed, name, "takes from"), Out: Resolve(solenoid.Out, name, "feeds"), To: Resolve(solenoid.To, name, "drains to"));
        if (solenoid.Kind == SolenoidKind.Pressure)
        {
            AddReducing(
                owner, LinkKind.SolenoidPort, name, nodes,
                new RegulatorElement(name, RegulatorKind.Solenoid, 0, 0, 0, 0, [], area, solenoid, solenoid.Place, [], null));
            return;
        }

        var number = draft.Switches.Count;
        draft.Switches.Add(new SwitchElement(name, solenoid));
        AddEdge(owner, LinkKind.SolenoidPort, nodes.Out, nodes.To, area, new Gate(GateKind.Solenoid, number, 0), name, Drained, solenoid.Place);
        AddEdge(owner, LinkKind.SolenoidPort, nodes.From, nodes.Out, area, new Gate(GateKind.Solenoid, number, 1), name, Fed, solenoid.Place);
    }
}
