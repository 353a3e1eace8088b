using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Spools and regulators that stick.</summary>
internal static class ValveFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var valve in revision.Valves)
            {
                yield return Stuck(part, valve, StuckAt.Rest, FaultKind.ValveStuckAtRest, "");
                yield return Stuck(part, valve, StuckAt.Moved, FaultKind.ValveStuckMoved, "");
                yield return Stuck(part, valve, StuckAt.Midway, FaultKind.ValveStuckMidway, ":open");
                yield return Stuck(part, valve, StuckAt.MidwayShut, FaultKind.ValveStuckMidway, ":shut");
            }

            foreach (var regulator in revision.Regulators)
            {
                yield return Stuck(part, regulator, RegulatorStuck.Open, FaultKind.RegulatorStuckOpen);
                yield return Stuck(part, regulator, RegulatorStuck.Shut, FaultKind.RegulatorStuckShut);
                if (regulator is Regulator.Reducing) yield return Stuck(part, regulator, RegulatorStuck.Drained, FaultKind.RegulatorStuckDrained);
            }
        }
    }

    private static Fault Stuck(Part part, Valve valve, StuckAt at, FaultKind kind, string how) => new(
        kind, $"{part.Name}.{valve.Name}{how}", $"valve {part.Name}.{valve.Name} {StuckText.Of(at)}", valve.Place, 0, [new StickValve(part.Name, valve, at)]);

    private static Fault Stuck(Part part, Regulator regulator, RegulatorStuck how, FaultKind kind) => new(
        kind, $"{part.Name}.{regulator.Name}", $"regulator {part.Name}.{regulator.Name} {StuckText.Of(how)}", regulator.Place, 0,
        [new StickRegulator(part.Name, regulator, how)]);
}
