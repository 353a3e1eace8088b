using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Valves(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            foreach (var valve in revision.Valves)
            {
                var name = $"{part.Name}.{valve.Name}";
                Stick(StuckAt.Rest, FaultKind.ValveStuckAtRest, "");
                Stick(StuckAt.Moved, FaultKind.ValveStuckMoved, "");
                Stick(StuckAt.Midway, FaultKind.ValveStuckMidway, ":open");
                Stick(StuckAt.MidwayShut, FaultKind.ValveStuckMidway, ":shut");
                if (valve.HeldBy.Concat(valve.MovedBy).Any(force => force is SpoolForce.Spring))
                    Add(WithoutSpring(new LoseSprings(part.Name, valve)), number);
                if (valve.Rest.Concat(valve.Moved).Any(Drains))
                    Add(Restricted(new RestrictExhaust(part.Name, valve, assembly.Unit.Faults.Exhaust), Phrase.Of($"exhaust of valve {name} restricted")), number);

                void Stick(StuckAt at, FaultKind kind, string how) =>
                    Add(new Fault(kind, $"{name}{how}", Phrase.Of($"valve {name} {StuckText.Of(at)}"), valve.Place, 0, [new StickValve(part.Name, valve, at)]), number);
            }
        }
    }
}
