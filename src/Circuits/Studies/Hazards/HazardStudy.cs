using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Changes;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Hazards;

/// <summary>Works out what every single fault comes to, in every gear and without current.</summary>
public static class HazardStudy
{
    /// <summary>The table.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="asked">What may be wrong, made for the assembly that is handed in; every fault of the library when null.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="mode">What verdicts rest on.</param>
    /// <param name="progress">Told with how many faults changes of gear were timed so far.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public static HazardReport Run(Assembly assembly, Func<Assembly, ImmutableArray<HazardMode>>? asked = null, int threads = 1, JudgeMode mode = JudgeMode.Full, Action<int>? progress = null, CancellationToken stop = default)
    {
        var (unit, dead) = HazardStates.Of(assembly, mode);
        var sound = assembly.In(unit);
        var judge = new UnitJudge(unit, mode, ShiftPlans.Of(assembly.Unit));
        var solver = new EffectSolver(judge, sound, timesChanges: true);
        ImmutableArray<HazardMode> modes = asked?.Invoke(sound) ?? [.. FaultLibrary.Of(sound).Select(fault => HazardMode.Of(sound, fault))];
        ImmutableArray<Assembly> changed = [sound, .. modes.Select(mode => ChangedAssembly.Of(sound, mode.Changes))];
        var effects = solver.Solve(changed, threads, stop);
        var table = new Table(unit, judge, dead);

        // What must not be driven is not made worse by a harsh shift; and a gear that never comes takes longest to time.
        var driven = Enumerable.Range(0, effects.Length).Where(index => index == 0 || table.MayBeDriven(effects[index], effects[0])).ToList();
        var timed = solver.WithChanges([.. driven.Select(index => (changed[index], effects[index]))], threads, progress, stop);
        foreach (var (index, with) in driven.Zip(timed)) effects = effects.SetItem(index, with);
        var fitted = table.EffectsOf(effects[0], null);
        var times = driven.ToHashSet();
        var rows = modes.Select((mode, index) => table.RowOf(mode, effects[0], effects[index + 1]) with { ChangesTimed = judge.TimesChanges && times.Contains(index + 1) })
            .OrderByDescending(row => row.Severity).ThenByDescending(row => row.Effects.Count(effect => effect.Severity == row.Severity)).ThenByDescending(row => row.Weight ?? 0);
        var report = new HazardReport(
            assembly, Nearest(judge, sound), [.. unit.Gears.Select(gear => gear.Name)], fitted, [.. rows], asked is not null,
            [.. Assumptions(unit, sound)], [])
        {
            Mode = mode,
            Points = judge.Points,
        };
        return report with { Findings = [.. judge.GearsetFaults, .. HazardFindings.Of(report)] };
    }

    private static ImmutableArray<string> Nearest(UnitJudge judge, Assembly assembly) => judge.ReferenceFor(assembly).Names;

    private static IEnumerable<Phrase> Assumptions(Unit unit, Assembly assembly)
    {
        if (unit.GearSet is null) yield return Phrase.Of($"no gear train in the file: what is felt is judged from the chart alone, and every gear that applies a clutch counts as one that drives forward");
        foreach (var text in NetworkBuilder.Build(assembly).Assumptions.Select(assumption => assumption.Text).Distinct()) yield return text;
    }

    /// <summary>What does not change from row to row.</summary>
    private sealed class Table(Unit unit, UnitJudge judge, ImmutableHashSet<string> dead)
    {
        private readonly ImmutableArray<GearPurpose> purposes = [.. unit.Gears.Select((gear, index) =>
            new GearPurpose(unit.GearSet is null ? !gear.Apply.IsEmpty : judge.RatioOf(index) is not null, judge.RatioOf(index)))];

        public bool MayBeDriven(ImmutableArray<GearEffect> found, ImmutableArray<GearEffect> sound) =>
            EffectsOf(found, sound) is not [{ Severity: >= SeverityScale.MustNotBeDriven }, ..];

        public HazardRow RowOf(HazardMode mode, ImmutableArray<GearEffect> sound, ImmutableArray<GearEffect> found) => new(
            mode.Name, mode.Code, mode.Item, mode.Function, mode.Place, mode.Weight, EffectsOf(found, sound), ReadingOf(sound, found));

        /// <summary>What is felt, worst first; of what is felt without the fault as well, nothing.</summary>
        public ImmutableArray<HazardEffect> EffectsOf(ImmutableArray<GearEffect> found, ImmutableArray<GearEffect>? sound)
        {
            var effects = new List<HazardEffect>();
            for (var gear = 0; gear < found.Length; gear++)
            {
                if (sound is { } right && found[gear].Kind == right[gear].Kind && found[gear].Instead == right[gear].Instead) continue;
                var severity = SeverityScale.Of(found[gear].Kind, purposes[gear], RatioOf(found[gear].Instead));
                if (severity == HazardSeverity.None) continue;
                effects.Add(new HazardEffect(
                    unit.Gears[gear].Name, dead.Contains(unit.Gears[gear].Name), severity, found[gear].Feel, [.. Local(gear, found[gear])]));
            }

            return [.. effects.OrderByDescending(effect => effect.Severity)];
        }

        private double? RatioOf(string? gear)
        {
            for (var i = 0; i < unit.Gears.Length; i++)
            {
                if (unit.Gears[i].Name == gear) return judge.RatioOf(i);
            }

            return null;
        }

        private IEnumerable<LocalEffect> Local(int gear, GearEffect found)
        {
            for (var i = 0; i < unit.Clutches.Length; i++)
            {
                var name = unit.Clutches[i].Name;
                var charted = unit.Gears[gear].Apply.Any(use => use.Name == name);
                if (found.Clutches[i] != (charted ? ClutchState.Applied : ClutchState.Released)) yield return new LocalEffect(name, charted, found.Clutches[i]);
            }
        }

        /// <summary>The reading that differs most, of those that a gauge can tell apart; in a gear where the vehicle stands still sooner than in another.</summary>
        private HazardReading? ReadingOf(ImmutableArray<GearEffect> sound, ImmutableArray<GearEffect> found)
        {
            var (best, least) = ((HazardReading?)null, (Stands: false, Apart: 0.0));
            for (var gear = 0; gear < found.Length; gear++)
            {
                for (var tap = 0; tap < unit.Taps.Length; tap++)
                {
                    var (right, now) = (sound[gear].Taps[tap] ?? 0, found[gear].Taps[tap] ?? 0);
                    if (Gauge.Same(right, now)) continue;
                    var rank = (Stands: !purposes[gear].Drives, Apart: Math.Abs(right - now));
                    if (rank.Stands.CompareTo(least.Stands) is var first && (first < 0 || (first == 0 && rank.Apart <= least.Apart))) continue;
                    (best, least) = (new HazardReading(unit.Taps[tap].Name, unit.Gears[gear].Name, right, now), rank);
                }
            }

            return best;
        }
    }
}
