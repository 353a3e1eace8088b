using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Studies.Diagnosis;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>What a fault would make people tell: every complaint in the trade's words, and every tap read in every gear.</summary>
internal static class ClosedLoop
{
    /// <summary>The evidence that effects make, as text that is read back.</summary>
    /// <param name="solver">The solver of the sound assembly.</param>
    /// <param name="effects">What the faulty one does.</param>
    public static ImmutableArray<Evidence> Told(EffectSolver solver, ImmutableArray<GearEffect> effects)
    {
        var unit = solver.Unit;
        var reader = new EvidenceReader(solver.Judge);
        var driven = new GearWords(solver.Judge).Driven;
        var told = ImmutableArray.CreateBuilder<Evidence>();
        foreach (var gear in driven)
        {
            var name = unit.Gears[gear].Name;
            told.Add(Read(effects[gear].Kind == FeelKind.AsItShould ? reader.Healthy(name) : reader.Complaint(Circuits.Rendering.PhraseWords.Of(Complaints.Of(effects[gear], name)!))));
        }

        for (var gear = 0; gear < unit.Gears.Length; gear++)
        {
            for (var tap = 0; tap < unit.Taps.Length; tap++)
                told.Add(Read(reader.Reading(string.Create(CultureInfo.InvariantCulture, $"{unit.Taps[tap].Name}@{unit.Gears[gear].Name}={Math.Min(20_000, effects[gear].Taps[tap] ?? 0):0.###}kPa"))));
        }

        return told.ToImmutable();
    }

    private static Evidence Read(EvidenceReading read) => read.Evidence ?? throw new InvalidOperationException($"{read.Problem} {read.Help}");
}
