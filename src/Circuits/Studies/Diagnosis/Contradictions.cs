using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Diagnosis;

/// <summary>Finds evidence that contradicts other evidence, whatever is wrong with the unit.</summary>
internal static class Contradictions
{
    public static ImmutableArray<Contradiction> Of(Unit unit, ImmutableArray<Evidence> evidence)
    {
        var found = ImmutableArray.CreateBuilder<Contradiction>();
        for (var i = 0; i < evidence.Length; i++)
        {
            for (var j = i + 1; j < evidence.Length; j++)
            {
                if (Why(unit, evidence[i], evidence[j]) is { } why) found.Add(new Contradiction(evidence[i], evidence[j], why));
            }
        }

        return found.ToImmutable();
    }

    private static Phrase? Why(Unit unit, Evidence one, Evidence other) => (one, other) switch
    {
        (Evidence.Felt a, Evidence.Felt b) => Felt(unit, a, b),
        (Evidence.Reading a, Evidence.Reading b) when a.Tap == b.Tap && a.Gear == b.Gear && a.Condition == b.Condition && !Gauge.Same(a.Kilopascals, b.Kilopascals) =>
            Phrase.Of($"{unit.Taps[a.Tap].Name} in {unit.Gears[a.Gear].Name} cannot read {new Pressure(a.Kilopascals):bare} and {new Pressure(b.Kilopascals)}; a gauge is taken to be right within {new Pressure(Gauge.Tolerance(a.Kilopascals, b.Kilopascals))}"),
        (AirEvidence a, AirEvidence b) when a.Excludes(b) => Phrase.Of($"nothing that air at {AirCheck.AirWords.Of(a.Predictions.Ports[a.Port])} does is both"),
        (Evidence.PartIs a, Evidence.PartIs b) when a.Part == b.Part && !a.Revisions.Any(b.Revisions.Contains) => Phrase.Of($"no revision of {a.Part} has both"),
        _ => null,
    };

    private static Phrase? Felt(Unit unit, Evidence.Felt a, Evidence.Felt b)
    {
        foreach (var one in a.In)
        {
            foreach (var other in b.In.Where(other => other.Gear == one.Gear))
            {
                if (!one.Fits.Any(fit => other.Fits.Any(its => its.Kind == fit.Kind && (its.Instead is null || fit.Instead is null || its.Instead == fit.Instead))))
                    return Phrase.Of($"nothing felt in {unit.Gears[one.Gear].Name} is both");
            }
        }

        return null;
    }
}
