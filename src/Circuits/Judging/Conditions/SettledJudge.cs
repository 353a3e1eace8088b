using System.Collections.Immutable;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging.Conditions;

/// <summary>Judges gears by what settled flow gives at the unit's conditions. Several threads may ask.</summary>
internal sealed class SettledJudge
{
    private readonly Unit unit;
    private readonly Func<ImmutableArray<SolvedAssembly>> matched;
    private readonly ShiftTrain train;
    private readonly Lock working = new();
    private readonly Dictionary<SolvedAssembly, FlowAnswers> known = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<SolvedAssembly, ConditionJudge> judges = new(ReferenceEqualityComparer.Instance);
    private ConditionJudge? alone;
    private (SolvedAssembly Assembly, FlowAnswers Answers)? last;

    /// <summary>A judge of one unit.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="matched">Its matched sets, solved.</param>
    public SettledJudge(Unit unit, Func<ImmutableArray<SolvedAssembly>> matched)
    {
        (this.unit, this.matched) = (unit, matched);
        train = new ShiftTrain(unit);
        Points = [.. unit.Conditions.Where(condition => condition.Judges.HasFlag(Judged.Gears)).Select(condition => OperatingPoint.Of(unit, condition))];
    }

    /// <summary>The conditions at which gears are judged.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    /// <summary>What flows in an assembly. That of a matched set is worked out once, and that of the assembly that was asked for last.</summary>
    /// <param name="solved">The assembly.</param>
    public FlowAnswers AnswersOf(SolvedAssembly solved)
    {
        var isMatched = matched().Contains(solved);
        lock (working)
        {
            if (!isMatched)
            {
                if (last is not var (assembly, made) || !ReferenceEquals(assembly, solved)) last = (solved, made = AnswersOf(solved.Network, gear => solved.Gears[gear].Solution));
                return made;
            }

            if (!known.TryGetValue(solved, out var answers)) known[solved] = answers = AnswersOf(solved.Network, gear => solved.Gears[gear].Solution);
            return answers;
        }
    }

    /// <summary>What flows in a network whose gears are solved one by one.</summary>
    /// <param name="network">The network.</param>
    /// <param name="start">A gear's static answer by its number.</param>
    public FlowAnswers AnswersOf(Network network, Func<int, GearSolution> start) => new(network, start, Points);

    /// <summary>What the unit needs besides clutches, against a reference.</summary>
    /// <param name="reference">The nearest matched sets.</param>
    public ImmutableArray<UnitNeed> NeedsOf(Reference reference) => JudgeOf(reference).Needs;

    /// <summary>A gear at each condition.</summary>
    /// <param name="here">What flows in the assembly.</param>
    /// <param name="reference">The nearest matched sets; the first of them is the measure.</param>
    /// <param name="gear">The gear's number.</param>
    public ImmutableArray<ConditionReport> Judge(FlowAnswers here, Reference reference, int gear)
    {
        var judge = JudgeOf(reference);
        var against = reference.Sets.IsEmpty ? null : AnswersOf(reference.Sets[0]);
        var reports = ImmutableArray.CreateBuilder<ConditionReport>(Points.Length);
        for (var point = 0; point < Points.Length; point++) reports.Add(judge.Judge(gear, point, here, against));
        return reports.MoveToImmutable();
    }

    private ConditionJudge JudgeOf(Reference reference)
    {
        ImmutableArray<int> points = [.. Enumerable.Range(0, Points.Length)];
        if (reference.Sets.IsEmpty) return alone ??= new ConditionJudge(unit, train, NeedFinder.Of(unit, null, points));
        lock (working)
        {
            var set = reference.Sets[0];
            if (!judges.TryGetValue(set, out var judge)) judges[set] = judge = new ConditionJudge(unit, train, NeedFinder.Of(unit, AnswersOf(set), points));
            return judge;
        }
    }
}
