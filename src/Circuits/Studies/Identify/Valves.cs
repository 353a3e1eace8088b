using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Valves(int revision)
    {
        foreach (var valve in part.Revisions[revision].Valves) table.Yes(Named(part.Name, TraitKind.Valve, "valve", valve.Name), revision);
    }
}

internal sealed partial class Unseen
{
    public void Valves(Revision revision)
    {
        foreach (var valve in revision.Valves)
            Add($"valve {valve.Name}", Join([Of(valve.Rest), Of(valve.Moved), Of(valve.MovedBy), Of(valve.HeldBy), Of(valve.Travel?.Millimetres), Of(valve.Overlap?.Millimetres)]));
    }

    private static string Of(ImmutableArray<SpoolForce> forces) => Join(forces.Select(force => force switch
    {
        SpoolForce.Signal signal => $"{signal.From.Name} {Of(signal.Area?.SquareMillimetres)}",
        SpoolForce.Spring spring => $"{Of(spring.Preload.Newtons)} {Of(spring.Rate?.NewtonsPerMillimetre)}",
        _ => "",
    }));
}
