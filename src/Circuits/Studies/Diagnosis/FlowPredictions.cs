using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// What gauges read when oil flows, at the conditions of the readings that name one: a leak, a restriction or a slow pump lowers what the static
/// answer takes for held. Worked out for those candidates alone that are asked for; others keep their static pressures.
/// </summary>
public sealed class FlowPredictions
{
    private readonly Assembly sound;
    private readonly ImmutableArray<(int Gear, ReadingCondition At)> states;
    private readonly Dictionary<string, ImmutableArray<double?>[]> known = [];

    private FlowPredictions(Assembly sound, ImmutableArray<(int Gear, ReadingCondition At)> states)
    {
        this.sound = sound;
        this.states = states;
    }

    /// <summary>Evidence whose readings under a condition know what flow makes of them; the same evidence where none names a condition, or the unit has no pump.</summary>
    /// <param name="sound">The assembly without faults.</param>
    /// <param name="evidence">The evidence.</param>
    /// <param name="predictions">The predictions; null where there are none to make.</param>
    internal static ImmutableArray<Evidence> Attach(Assembly sound, ImmutableArray<Evidence> evidence, out FlowPredictions? predictions)
    {
        var made = predictions = null;
        ImmutableArray<(int, ReadingCondition)> states = [.. evidence.OfType<Evidence.Reading>().Where(reading => reading.Condition is not null).Select(reading => (reading.Gear, reading.Condition!)).Distinct()];
        if (states.IsEmpty || sound.Unit.Pump is null) return evidence;
        made = predictions = new FlowPredictions(sound, states);
        made.Prepare([[]], 1);
        return [.. evidence.Select(item => item is Evidence.Reading { Condition: not null } reading ? reading with { Flow = made } : item)];
    }

    /// <summary>Works out what candidates make gauges read.</summary>
    /// <param name="candidates">The faults of each.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="stop">Breaks it off.</param>
    internal void Prepare(IReadOnlyList<ImmutableArray<Fault>> candidates, int threads, CancellationToken stop = default)
    {
        var open = candidates.Where(faults => !known.ContainsKey(FaultSets.KeyOf(faults))).ToList();
        var found = new ImmutableArray<double?>[open.Count][];
        Parallel.For(0, open.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads), CancellationToken = stop }, i => found[i] = Solve(open[i]));
        for (var i = 0; i < found.Length; i++) known[FaultSets.KeyOf(open[i])] = found[i];
    }

    /// <summary>What a gauge reads, kPa; null where it was not worked out or the flow has no answer.</summary>
    /// <param name="faults">What is wrong.</param>
    /// <param name="reading">The reading.</param>
    internal double? Of(ImmutableArray<Fault> faults, Evidence.Reading reading) =>
        known.TryGetValue(FaultSets.KeyOf(faults), out var taps) && states.IndexOf((reading.Gear, reading.Condition!)) is var state and >= 0 && !taps[state].IsEmpty
            ? taps[state][reading.Tap] : null;

    private ImmutableArray<double?>[] Solve(ImmutableArray<Fault> faults)
    {
        var assembly = sound.With(faults);
        var network = NetworkBuilder.Build(assembly);
        var answer = SolvedAssembly.OneByOne(Plan.Of(network));
        var steady = new SteadyAssembly(network);
        return [.. states.Select(state => Taps(steady.Solve(answer(state.Gear), FlowConditions.Of(assembly.Unit, state.At.Celsius, state.At.RevolutionsPerMinute, []))))];
    }

    private ImmutableArray<double?> Taps(SteadyGear state) => !state.Converged ? [] :
    [
        .. sound.Unit.Taps.Select(tap => state.Network.FindNode(tap.At.Name) is var node and >= 0 ? Math.Max(0, state.PressureAt(node) / 1e3) : (double?)null),
    ];
}
