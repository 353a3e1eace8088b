using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Matrix;

/// <summary>
/// Judges the assemblies of a matrix one by one. A gear whose answer hangs on the same things as one judged before is not solved again:
/// the network with what the gear keeps shut taken away, the same of the gears that it may be reached from, and the
/// matched sets that it is held against. Not for use by several threads at once.
/// </summary>
internal sealed class MatrixJudge
{
    private readonly MatrixSpace space;
    private readonly MatrixMemory memory;
    private readonly UnitJudge judge;
    private readonly JointStacks stacks;
    private readonly NearestSets nearest;
    private readonly ImmutableArray<GearState> gears;
    private readonly KeptNetworks kept = new();
    private readonly int[] digits;
    private readonly ByteList bytes = new();

    public MatrixJudge(MatrixSpace space, MatrixMemory memory)
    {
        this.space = space;
        this.memory = memory;
        judge = new UnitJudge(space.Unit);
        stacks = new JointStacks(space.Unit);
        nearest = new NearestSets(space, judge);
        gears = space.Unit.Gears;
        digits = new int[space.Choices.Length];
    }

    /// <summary>What assemblies do, in order.</summary>
    /// <param name="from">The first one's number.</param>
    /// <param name="to">One past the last one's.</param>
    /// <param name="interrupted">Stops the work.</param>
    /// <remarks>
    /// Those whose networks are equal are judged one after the other, so that a piece keeps no network for longer than it needs it.
    /// </remarks>
    public MatrixEntry[] Judge(long from, long to, CancellationToken interrupted)
    {
        var entries = new MatrixEntry[to - from];
        var groups = new Dictionary<UInt128, List<Candidate>>(entries.Length);
        for (var number = from; number < to; number++)
        {
            interrupted.ThrowIfCancellationRequested();
            var (assembly, seen) = Look(number, out var network);
            ref var group = ref CollectionsMarshal.GetValueRefOrAddDefault(groups, seen.Whole, out _);
            (group ??= []).Add(new Candidate(number, assembly.Matched, seen, group.Count == 0 ? network : null));
        }

        foreach (var group in groups.Values)
        {
            var solved = kept.Find(group[0].Seen.Whole);
            foreach (var candidate in group)
            {
                interrupted.ThrowIfCancellationRequested();
                entries[candidate.Number - from] = Judge(candidate, () => solved ??= Solve(group[0]));
            }

            group.Clear();
        }

        return entries;
    }

    private SolvedNetwork Solve(Candidate first)
    {
        var solved = new SolvedNetwork(first.Network!);
        kept.Keep(first.Seen.Whole, solved);
        return solved;
    }

    private (Assembly Assembly, SeenNetwork Seen) Look(long number, out OpenNetwork network)
    {
        var assembly = space.At(number);
        var built = NetworkBuilder.BuildOpen(assembly, joint => stacks.Of(assembly, joint));
        network = new OpenNetwork(built, [.. gears.Select(gear => GearInputs.Of(built, gear))]);
        return (assembly, SeenNetwork.Of(built, network.Inputs, memory.Names, bytes));
    }

    private MatrixEntry Judge(Candidate candidate, Func<SolvedNetwork> solve)
    {
        space.Decode(candidate.Number, digits);
        var sets = nearest.Of(digits);
        var behaviours = ImmutableArray.CreateBuilder<GearBehaviour>(space.Gears.Length);
        foreach (var gear in space.Gears)
        {
            var key = KeyOf(gear, candidate.Seen, sets.Key, candidate.Matched is not null);
            if (memory.Recall(key) is not { } behaviour)
            {
                var solved = candidate.Matched is { } set
                    ? new SolvedNetwork(judge.Matched.First(other => other.Network.Assembly.Matched == set))
                    : solve();
                var (state, controls) = solved.Solve(gear);
                behaviour = judge.Behaviour(state, gear, sets.Reference, sets.Gears[gear], controls);
                memory.Remember(key, behaviour);
            }

            behaviours.Add(behaviour);
        }

        return new MatrixEntry(candidate.Number, AssemblyBehaviour.Of(behaviours.MoveToImmutable()), candidate.Seen.Whole);
    }

    private UInt128 KeyOf(int gear, SeenNetwork seen, UInt128 sets, bool isMatched)
    {
        bytes.Clear();
        bytes.Add(gear);
        bytes.Add(isMatched ? 1 : 0);
        bytes.Add(sets);
        for (var start = Math.Max(0, gear - 1); start <= Math.Min(gears.Length - 1, gear + 1); start++)
        {
            // A start's own state hangs on the gears that it comes after in turn.
            for (var (at, hops) = (start, 0); at >= 0 && hops <= gears.Length; at = AssemblySolver.Before(gears, at), hops++) bytes.Add(seen.Gears[at]);
        }

        return Fingerprints.Of(bytes.Written);
    }
}

/// <summary>An assembly that is to be judged, and its network where it is the first of those that have an equal one.</summary>
internal readonly record struct Candidate(long Number, string? Matched, SeenNetwork Seen, OpenNetwork? Network);
