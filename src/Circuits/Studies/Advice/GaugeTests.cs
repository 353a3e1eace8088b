using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Diagnosis;

namespace Circuits.Studies.Advice;

/// <summary>A gauge at every tap, in every gear that a driver can choose or the default state gives, but for what was read already.</summary>
internal sealed class GaugeTests(Unit unit, ImmutableArray<Evidence> evidence) : ITestSource
{
    public IEnumerable<ProposedTest> Propose(IReadOnlyList<Candidate> candidates)
    {
        for (var gear = 0; gear < unit.Gears.Length; gear++)
        {
            for (var tap = 0; tap < unit.Taps.Length; tap++)
            {
                if (evidence.OfType<Evidence.Reading>().Any(read => read.Gear == gear && read.Tap == tap)) continue;
                var readings = candidates.Select(candidate => candidate.Effects[gear].Taps[tap] ?? 0).ToList();
                yield return new ProposedTest(TestKind.Gauge, Phrase.Of($"gauge at {unit.Taps[tap].Name} in {unit.Gears[gear].Name}"), Groups(readings));
            }
        }
    }

    /// <summary>
    /// What a gauge tells apart: readings in order of size, parted where the next one is beyond what a gauge takes for the same as the first of its
    /// group.
    /// </summary>
    public static ImmutableArray<Phrase> Groups(IReadOnlyList<double> readings)
    {
        var names = new Phrase[readings.Count];
        var order = Enumerable.Range(0, readings.Count).OrderBy(i => readings[i]).ToList();
        for (var from = 0; from < order.Count;)
        {
            var to = from;
            while (to < order.Count && Gauge.Same(readings[order[from]], readings[order[to]])) to++;
            var (least, most) = (readings[order[from]], readings[order[to - 1]]);
            var name = most < 1 ? Phrase.Of($"no pressure")
                : most - least < 1 ? Phrase.Of($"{new Pressure(most)}")
                : Phrase.Of($"{new Pressure(least):bare} to {new Pressure(most)}");
            for (var i = from; i < to; i++) names[order[i]] = name;
            from = to;
        }

        return [.. names];
    }
}
