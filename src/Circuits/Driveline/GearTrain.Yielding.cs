using System.Collections.Immutable;

namespace Circuits.Driveline;

/// <content>How it gives way when clutches slip.</content>
public sealed partial class GearTrain
{
    /// <summary>
    /// How much torque at the input clutches of given capacities can hold while the output is loaded.
    /// </summary>
    /// <param name="reverse">Whether the output is driven against the direction of the input.</param>
    /// <param name="standing">The one-way clutches that can hold; one that overruns holds nothing before it has come to a stand.</param>
    /// <remarks>
    /// By virtual work: while the input turns by one and the output by nothing, or backwards, the clutches that slip take up their
    /// capacity times their slip. The way of giving way that takes the least is what happens, and its work is the torque that can be held
    /// (the upper-bound theorem of limit analysis, with the slipping clutch for the hinge). The least is always among those in which
    /// as many clutches as possible do not slip; those are found here once, exactly.
    /// </remarks>
    public TorqueLimits Limits(bool reverse, IReadOnlyCollection<string> standing)
    {
        var slips = Array.ConvertAll([.. clutches], Slip);
        var frees = Array.ConvertAll([.. oneWays.Where(pair => standing.Contains(pair.Coupling.Name))], Slip);
        var load = reverse ? Array.ConvertAll(speeds[output], value => -value) : speeds[output];
        var walls = new List<Fraction[]>([.. slips, .. frees, load]);
        var ways = new List<Fraction[]>();

        // Members that nothing ties to the rest turn as they like and make no difference.
        var rank = Elimination.Reduce([.. walls.Append(speeds[input]).Select(row => (Fraction[])[.. row])], freedom).Count;
        foreach (var chosen in Choices(walls.Count, rank - 1))
        {
            if (Solution([.. chosen.Select(i => walls[i])]) is not { } motion) continue;
            if (Along(load, motion).Sign > 0 || Array.Exists(frees, free => Along(free, motion).Sign < 0)) continue;
            ways.Add(Array.ConvertAll(slips, slip => Along(slip, motion)));
        }

        return new TorqueLimits(
            [.. clutches.Select(pair => pair.Coupling.Name)], [.. ways.Select(way => way.Select(slip => Math.Abs(slip.ToDouble())).ToImmutableArray())]);
    }

    /// <summary>A motion with the input at one in which none of the given combinations moves; null where these do not settle it.</summary>
    private Fraction[]? Solution(Fraction[][] still)
    {
        Fraction[][] rows = [.. still.Select(row => (Fraction[])[.. row, default]), [.. speeds[input], Fraction.One]];
        var pivots = Elimination.Reduce(rows, freedom + 1);
        if (pivots.Count != rows.Length || pivots.Contains(freedom)) return null;
        var motion = new Fraction[freedom];
        for (var i = 0; i < pivots.Count; i++) motion[pivots[i]] = rows[i][freedom];
        return motion;
    }

    private static Fraction Along(Fraction[] combination, Fraction[] motion)
    {
        var sum = default(Fraction);
        for (var i = 0; i < motion.Length; i++) sum += combination[i] * motion[i];
        return sum;
    }

    /// <summary>Every choice of so many out of a count, in order.</summary>
    private static IEnumerable<ImmutableArray<int>> Choices(int count, int taken, int from = 0)
    {
        if (taken == 0) return [[]];
        return Enumerable.Range(from, Math.Max(0, count - from - taken + 1))
            .SelectMany(first => Choices(count, taken - 1, first + 1).Select(rest => rest.Insert(0, first)));
    }
}
