using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Solenoids(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            foreach (var solenoid in revision.Solenoids)
            {
                var name = $"{part.Name}.{solenoid.Name}";

                // A dead one is stuck as it is at rest, which its name says.
                Fail(SolenoidFault.StuckLow, FaultKind.SolenoidStuckLow, Phrase.Of($"{StuckText.Of(SolenoidFault.StuckLow)}{Dead(solenoid, RestState.Low)}"));
                Fail(SolenoidFault.StuckHigh, FaultKind.SolenoidStuckHigh, Phrase.Of($"{StuckText.Of(SolenoidFault.StuckHigh)}{Dead(solenoid, RestState.High)}"));
                Fail(SolenoidFault.Reversed, FaultKind.SolenoidReversed, StuckText.Of(SolenoidFault.Reversed));
                if (!solenoid.To.Name.IsExhaust) continue;
                var drain = new RestrictDrain(part.Name, solenoid.Name, assembly.Unit.Faults.Exhaust, solenoid.Place);
                Add(Restricted(drain, Phrase.Of($"exhaust of solenoid {name} restricted")), number, last: true);

                void Fail(SolenoidFault fault, FaultKind kind, Phrase how) =>
                    Add(new Fault(kind, name, Phrase.Of($"solenoid {name} {how}"), solenoid.Place, 0, [new FailSolenoid(part.Name, solenoid, fault)]));
            }
        }
    }

    private static Phrase Dead(Solenoid solenoid, RestState rest) => solenoid.AtRest == rest ? Phrase.Of($", or without current") : Phrase.Empty;
}
