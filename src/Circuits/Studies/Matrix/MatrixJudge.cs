using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Matrix;

/// <summary>
/// Judges the assemblies of a matrix one by one. A gear whose answer hangs on the same things as one judged before is not solved again:
/// the network with what the gear keeps shut taken away, the same of the gears that it may be reached from, and the
/// matched sets that it is held against. Changes of gear are timed where every gear is as it should be: elsewhere the gears say enough. Not for use by several threads at once.
/// </summary>
internal sealed class MatrixJudge
{
    private readonly MatrixSpace space;
    private readonly MatrixMemory memory;
    private readonly UnitJudge judge;
    private readonly JointStacks stacks;
    private readonly NodeStock nodes = new();
    private readonly NearestSets nearest;
    private readonly ImmutableArray<GearState> gears;
    private readonly int[] digits;
    private readonly ByteList bytes = new();
    private readonly Ways ways = new();

    // Of the assembly that is being judged, gear by gear: what its answer hangs on, the answer where it is known, else the question.
    private readonly UInt128[] keys;
    private readonly GearBehaviour?[] known;
    private readonly AskedGear?[] asked;

    public MatrixJudge(MatrixSpace space, MatrixMemory memory)
    {
        this.space = space;
        this.memory = memory;
        judge = new UnitJudge(space.Unit, space.Mode);
        stacks = new JointStacks(space.Unit);
        nearest = new NearestSets(space, judge);
        gears = space.Unit.Gears;
        digits = new int[space.Choices.Length];
        keys = new UInt128[space.Gears.Length];
        known = new GearBehaviour?[space.Gears.Length];
        asked = new AskedGear?[space.Gears.Length];
    }

    /// <summary>What an assembly does.</summary>
    /// <param name="number">Its number.</param>
    public MatrixEntry Judge(long number)
    {
        var (assembly, network, inputs, seen, whole) = Look(number);
        space.Decode(number, digits);
        var sets = nearest.Of(digits);
        SolvedNetwork? solved = null;
        for (var i = 0; i < known.Length; i++)
        {
            keys[i] = KeyOf(space.Gears[i], seen, whole, sets.Key, assembly.Matched is not null);
            known[i] = memory.Ask(keys[i], out asked[i]);
            if (known[i] is null) TakeUp(i);
        }

        // What other threads are at is waited for last, when they cannot be waiting for this one.
        var behaviours = ImmutableArray.CreateBuilder<GearBehaviour>(known.Length);
        for (var i = 0; i < known.Length; i++)
        {
            while (known[i] is null && (known[i] = asked[i]!.Known ?? asked[i]!.Wait()) is null) TakeUp(i);
            behaviours.Add(known[i]!);
        }

        var done = behaviours.MoveToImmutable();
        var changes = judge.TimesChanges && done.All(gear => gear.Verdict == Verdict.AsCharted)
            ? memory.ChangesOf(KeyOf(-1, seen, whole, sets.Key, assembly.Matched is not null), () => judge.ChangesOf(network, Solved().Answer, sets.Reference))
            : (ImmutableArray<ChangeBehaviour>?)null;
        solved?.Rest();
        return new MatrixEntry(number, AssemblyBehaviour.Of(done, changes), whole);

        void TakeUp(int i)
        {
            if (asked[i]!.Take()) memory.Keep(keys[i], asked[i]!.Answer(() => WorkOut(space.Gears[i])));
        }

        SolvedNetwork Solved() => solved ??= assembly.Matched is { } set
            ? new SolvedNetwork(judge, judge.Matched.First(other => other.Network.Assembly.Matched == set))
            : memory.Networks.Get(whole, () => new SolvedNetwork(judge, network, inputs));

        GearBehaviour WorkOut(int gear)
        {
            var (state, controls) = Solved().Solve(gear, ways);
            return judge.Behaviour(state, gear, sets.Reference, sets.Gears[gear], controls, solved!.Flow);
        }
    }

    /// <summary>The same number for assemblies whose networks the solver cannot tell apart; solves nothing.</summary>
    /// <param name="number">An assembly's number.</param>
    public UInt128 NetworkOf(long number) => Look(number).Whole;

    private (Assembly Assembly, Network Network, ImmutableArray<GearInputs> Inputs, SeenNetwork Seen, UInt128 Whole) Look(long number)
    {
        var assembly = space.At(number);
        var network = NetworkBuilder.BuildOpen(assembly, joint => stacks.Of(assembly, joint), nodes);
        ImmutableArray<GearInputs> inputs = [.. gears.Select(gear => GearInputs.Of(network, gear))];
        var seen = SeenNetwork.Of(network, inputs, memory.Names, bytes);
        return (assembly, network, inputs, seen, space.Mode == JudgeMode.Full ? WithFlow(seen.Whole, assembly) : seen.Whole);
    }

    private UInt128 WithFlow(UInt128 seen, Assembly assembly)
    {
        bytes.Clear();
        bytes.Add(seen);
        SeenFlow.Add(assembly, memory.Elements, bytes);
        return Fingerprints.Key(bytes.Written);
    }

    private UInt128 KeyOf(int gear, SeenNetwork seen, UInt128 whole, UInt128 sets, bool isMatched)
    {
        bytes.Clear();
        bytes.Add(gear);
        bytes.Add(isMatched ? 1 : 0);
        bytes.Add(sets);
        if (space.Mode == JudgeMode.Full)
        {
            // A spool that flow lets stand midway opens what the static answer has shut: all of the network counts in every gear.
            bytes.Add(whole);
            return Fingerprints.Key(bytes.Written);
        }

        for (var start = Math.Max(0, gear - 1); start <= Math.Min(gears.Length - 1, gear + 1); start++)
        {
            // A start's own state hangs on the gears that it comes after in turn.
            for (var (at, hops) = (start, 0); at >= 0 && hops <= gears.Length; at = AssemblySolver.Before(gears, at), hops++) bytes.Add(seen.Gears[at]);
        }

        return Fingerprints.Key(bytes.Written);
    }
}
