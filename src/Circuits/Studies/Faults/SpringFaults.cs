using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Springs missing: of spools, regulators, accumulators and clutches.</summary>
internal static class SpringFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var valve in revision.Valves.Where(valve => valve.HeldBy.Concat(valve.MovedBy).Any(force => force is SpoolForce.Spring)))
                yield return Missing(new LoseSprings(part.Name, valve));
            foreach (var regulator in revision.Regulators.Where(regulator => regulator.Spring is { Kilopascals: > 0 }))
                yield return Missing(new LoseRegulatorSpring(part.Name, regulator));
            foreach (var accumulator in revision.Accumulators.Where(accumulator => accumulator.Spring is not null))
                yield return Missing(new LoseAccumulatorSpring(part.Name, accumulator));
        }

        foreach (var clutch in LeakFaults.ClutchesOf(assembly))
        {
            if (clutch is { ReturnSpring: not null, At: { } at } && assembly.Unit.FindPart(at.Name.Part) is not null)
                yield return Missing(new LoseReturnSpring(at.Name.Part, clutch));
        }
    }

    private static Fault Missing(Change change) => new(FaultKind.SpringMissing, change.Element, change.Text, change.Place, 0, [change]);
}
