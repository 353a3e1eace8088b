using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Ways to sump that are partly stopped up: of spools, of the manual valve, of regulators and solenoids.</summary>
internal static class ExhaustFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        var area = assembly.Unit.Faults.Exhaust;
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var valve in revision.Valves.Where(valve => valve.Rest.Concat(valve.Moved).Any(Drains)))
                yield return Restricted(new RestrictExhaust(part.Name, valve, area), $"exhaust of valve {part.Name}.{valve.Name} restricted");
            foreach (var fault in OfLever(part, revision, assembly)) yield return fault;
            foreach (var regulator in revision.Regulators.OfType<Regulator.Reducing>().Where(regulator => regulator.To.Name.IsExhaust))
                yield return Drain(part, regulator.Name, "regulator", new RestrictDrain(part.Name, regulator.Name, area, regulator.Place));
            foreach (var solenoid in revision.Solenoids.Where(solenoid => solenoid.To.Name.IsExhaust))
                yield return Drain(part, solenoid.Name, "solenoid", new RestrictDrain(part.Name, solenoid.Name, area, solenoid.Place));
        }
    }

    private static IEnumerable<Fault> OfLever(Part part, Revision revision, Assembly assembly) =>
        from drained in revision.Lever.SelectMany(position => position.Ports).Where(Drains)
            .SelectMany(port => port.Passages.Where(use => !use.Name.IsExhaust).Select(use => (use.Name, port.Place))).DistinctBy(pair => pair.Name)
        select Restricted(
            new RestrictLever(part.Name, drained.Name, assembly.Unit.Faults.Exhaust, drained.Place), $"exhaust of {drained.Name} at the manual valve restricted");

    private static bool Drains(Port port) => port.Passages.Any(use => use.Name.IsExhaust);

    private static Fault Drain(Part part, string name, string what, Change change) => Restricted(change, $"exhaust of {what} {part.Name}.{name} restricted");

    private static Fault Restricted(Change change, string name) => new(FaultKind.ExhaustRestricted, change.Element, name, change.Place, 0, [change]);
}
