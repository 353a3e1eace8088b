using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Regulators(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            foreach (var regulator in revision.Regulators)
            {
                var name = $"{part.Name}.{regulator.Name}";
                Stick(RegulatorStuck.Open, FaultKind.RegulatorStuckOpen);
                Stick(RegulatorStuck.Shut, FaultKind.RegulatorStuckShut);
                if (regulator is Regulator.Reducing) Stick(RegulatorStuck.Drained, FaultKind.RegulatorStuckDrained);
                if (regulator.Spring is { Kilopascals: > 0 }) Add(WithoutSpring(new LoseRegulatorSpring(part.Name, regulator)), number);
                if (regulator is not Regulator.Reducing { To.Name.IsExhaust: true }) continue;
                var drain = new RestrictDrain(part.Name, regulator.Name, assembly.Unit.Faults.Exhaust, regulator.Place);
                Add(Restricted(drain, Phrase.Of($"exhaust of regulator {name} restricted")), number, last: true);

                void Stick(RegulatorStuck how, FaultKind kind) =>
                    Add(new Fault(kind, name, Phrase.Of($"regulator {name} {StuckText.Of(how)}"), regulator.Place, 0, [new StickRegulator(part.Name, regulator, how)]), number);
            }
        }
    }
}
