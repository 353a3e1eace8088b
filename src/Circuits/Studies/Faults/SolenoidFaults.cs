using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Solenoids that do not do what they are told. A dead one is stuck as it is at rest, which its name says.</summary>
internal static class SolenoidFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var solenoid in revision.Solenoids)
            {
                yield return Failed(part, solenoid, SolenoidFault.StuckLow, FaultKind.SolenoidStuckLow, $"stuck low{Dead(solenoid, RestState.Low)}");
                yield return Failed(part, solenoid, SolenoidFault.StuckHigh, FaultKind.SolenoidStuckHigh, $"stuck high{Dead(solenoid, RestState.High)}");
                yield return Failed(part, solenoid, SolenoidFault.Reversed, FaultKind.SolenoidReversed, "of the other polarity");
            }
        }
    }

    private static string Dead(Solenoid solenoid, RestState rest) => solenoid.AtRest == rest ? ", or without current" : "";

    private static Fault Failed(Part part, Solenoid solenoid, SolenoidFault fault, FaultKind kind, string how) => new(
        kind, $"{part.Name}.{solenoid.Name}", $"solenoid {part.Name}.{solenoid.Name} {how}", solenoid.Place, 0,
        [new FailSolenoid(part.Name, solenoid, fault)]);
}
