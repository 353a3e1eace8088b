using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging.Changes;

/// <summary>
/// Judges the changes of gear of a unit by time: engagements at the conditions that judge those, all others at theirs, against the same change of the
/// nearest matched set. What matched sets do is timed once.
/// </summary>
internal sealed class ChangeJudge
{
    private readonly Unit unit;
    private readonly ImmutableArray<(ShiftPlan Plan, OperatingPoint At)> asked;
    private readonly Dictionary<string, ImmutableArray<TimedShiftReport>> matched = [];

    /// <summary>A judge of one unit.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="plans">The changes that it makes.</param>
    public ChangeJudge(Unit unit, ImmutableArray<ShiftPlan> plans)
    {
        this.unit = unit;
        asked =
        [
            .. from plan in plans
               from condition in unit.Conditions
               where condition.Judges.HasFlag(plan.Kind is ShiftKind.Engagement or ShiftKind.Release ? Judged.Engagements : Judged.Shifts)
               select (plan, OperatingPoint.Of(unit, condition)),
        ];
    }

    /// <summary>The changes of an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="nearest">The nearest matched set, or null.</param>
    /// <param name="isRight">Whether a gear of the assembly is as it should be.</param>
    public ImmutableArray<ChangeReport> Judge(Assembly assembly, Assembly? nearest, Func<GearState, bool> isRight)
    {
        var here = Timed(assembly);
        var there = nearest is null || IsMatched(assembly) ? default : Timed(nearest);
        return [.. asked.Select((pair, i) =>
        {
            var beside = there.IsDefault ? null : there[i];
            var change = ShiftJudge.Feel(here[i], beside, unit.Thresholds.Shifts);
            return new ChangeReport(pair.At, ChangeDoubt.Of(change, beside, assembly, Conditions(pair.At), isRight), beside);
        })];
    }

    /// <summary>Changes of an assembly whose gears are solved already, one after the other.</summary>
    /// <param name="network">Its network.</param>
    /// <param name="gears">A gear's static answer by its number.</param>
    /// <param name="nearest">The nearest matched set, or null.</param>
    /// <param name="wanted">Which changes.</param>
    /// <param name="doubt">Whether it is looked into what hangs on a size that is not given.</param>
    public ImmutableArray<ChangeReport> Judge(Network network, Func<int, GearSolution> gears, Assembly? nearest, Func<ShiftPlan, bool> wanted, bool doubt)
    {
        var there = nearest is null || IsMatched(network.Assembly) ? default : Timed(nearest);
        var timers = new Dictionary<OperatingPoint, ShiftTimer>();
        var made = ImmutableArray.CreateBuilder<ChangeReport>();
        for (var i = 0; i < asked.Length; i++)
        {
            var (plan, at) = asked[i];
            if (!wanted(plan)) continue;
            var beside = there.IsDefault ? null : there[i];
            var change = ShiftJudge.Feel(TimerAt(at, timers, network, gears).Time(plan), beside, unit.Thresholds.Shifts);
            made.Add(new ChangeReport(at, doubt ? ChangeDoubt.Of(change, beside, network.Assembly, Conditions(at), static _ => true) : change, beside));
        }

        return made.ToImmutable();
    }

    /// <summary>What is wrong with changes: an error, unless it is only felt, or the nearest matched set does no better. What is the same at several conditions is one finding.</summary>
    /// <param name="changes">The changes.</param>
    public static IEnumerable<Finding> FindingsOf(ImmutableArray<ChangeReport> changes)
    {
        foreach (var alike in ChangeReport.Alike(changes))
        {
            var change = alike[0];
            if (ShiftRules.Of(change.Verdict) is not { } rule) continue;
            var plan = change.Plan;
            var at = Phrase.Join(", ", alike.Select(each => Phrase.Of($"{each.At}")));
            var shared = change.SharedByMatched ? Phrase.Of($"; the matched set does no better") : Phrase.Empty;
            var finding = rule.At(plan.Profile?.Place ?? plan.To.Place, $"{plan.Name} at {at}: {change.Here.Reason}{shared}") with { Gear = plan.To.Name };
            yield return change.SharedByMatched && finding.Severity == Severity.Error ? finding with { Severity = Severity.Warning } : finding;
        }
    }

    private ImmutableArray<TimedShiftReport> Timed(Assembly assembly)
    {
        if (IsMatched(assembly))
        {
            var name = assembly.Matched!;
            lock (matched)
            {
                if (!matched.TryGetValue(name, out var known)) matched[name] = known = Time(assembly);
                return known;
            }
        }

        return Time(assembly);
    }

    /// <summary>Times every change; on two cores at once, since one does not wait for another.</summary>
    private ImmutableArray<TimedShiftReport> Time(Assembly assembly)
    {
        var network = NetworkBuilder.Build(assembly);
        var solve = SolvedAssembly.OneByOne(Solving.Plan.Of(network));
        var gears = unit.Gears.Select((_, index) => solve(index)).ToImmutableArray();
        var reports = new TimedShiftReport[asked.Length];
        Parallel.For(0, asked.Length, () => new Dictionary<OperatingPoint, ShiftTimer>(), (i, _, timers) =>
        {
            reports[i] = TimerAt(asked[i].At, timers, network, index => gears[index]).Time(asked[i].Plan);
            return timers;
        }, static _ => { });
        return [.. reports];
    }

    private static bool IsMatched(Assembly assembly) => assembly.Matched is not null && assembly.Changes.IsEmpty;

    private static ShiftTimer TimerAt(OperatingPoint at, Dictionary<OperatingPoint, ShiftTimer> timers, Network network, Func<int, GearSolution> gears)
    {
        if (!timers.TryGetValue(at, out var timer)) timers[at] = timer = new ShiftTimer(network, gears, Conditions(at), ShiftTimer.Tolerance);
        return timer;
    }

    private static ShiftConditions Conditions(OperatingPoint at) => new(at.Celsius, at.RevolutionsPerMinute, at.RevolutionsPerMinute, null);
}
