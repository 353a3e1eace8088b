using System.Collections.Concurrent;
using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Stacking;

namespace Circuits.Studies.Matrix;

/// <summary>What the threads of one matrix learn from one another. Bounded: what is forgotten is worked out again.</summary>
internal sealed class MatrixMemory
{
    private const int MostGears = 1 << 17;

    private readonly ConcurrentDictionary<UInt128, GearBehaviour> gears = new();
    private int count;

    /// <summary>Numbers of names.</summary>
    public NameNumbers Names { get; } = new();

    /// <summary>
    /// Networks whose gears are kept solved. Equal ones follow one another closely, and what is kept longer only survives collections.
    /// </summary>
    private const int MostNetworks = 8;

    private readonly ConcurrentDictionary<UInt128, SolvedNetwork> networks = new();

    /// <summary>A network that was seen before, or the new one.</summary>
    /// <param name="key">What solver and judge see of it.</param>
    /// <param name="make">Makes it.</param>
    public SolvedNetwork Network(UInt128 key, Func<SolvedNetwork> make)
    {
        if (networks.TryGetValue(key, out var known)) return known;
        if (networks.Count >= MostNetworks) networks.Clear();
        return networks.GetOrAdd(key, make());
    }

    /// <summary>What a gear does that was judged before; null when none was.</summary>
    /// <param name="key">Everything that the answer depends on.</param>
    public GearBehaviour? Recall(UInt128 key) => gears.GetValueOrDefault(key);

    /// <summary>Remembers what a gear does.</summary>
    public void Remember(UInt128 key, GearBehaviour behaviour)
    {
        if (gears.TryAdd(key, behaviour) && Interlocked.Increment(ref count) % MostGears == 0) gears.Clear();
    }
}

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

    /// <summary>What an assembly does.</summary>
    /// <param name="number">Its number.</param>
    public MatrixEntry Judge(long number)
    {
        var assembly = space.At(number);
        var network = NetworkBuilder.BuildOpen(assembly, joint => stacks.Of(assembly, joint));
        ImmutableArray<GearInputs> inputs = [.. gears.Select(gear => GearInputs.Of(network, gear))];
        var seen = SeenNetwork.Of(network, inputs, memory.Names, bytes);
        space.Decode(number, digits);
        var sets = nearest.Of(digits);
        SolvedNetwork? solved = null;
        var behaviours = ImmutableArray.CreateBuilder<GearBehaviour>(space.Gears.Length);
        foreach (var gear in space.Gears)
        {
            var key = KeyOf(gear, seen, sets.Key, assembly.Matched is not null);
            if (memory.Recall(key) is not { } behaviour)
            {
                solved ??= assembly.Matched is { } set
                    ? new SolvedNetwork(judge.Matched.First(other => other.Network.Assembly.Matched == set))
                    : memory.Network(seen.Whole, () => new SolvedNetwork(network, inputs));
                var (state, controls) = solved.Solve(gear);
                behaviour = judge.Behaviour(state, gear, sets.Reference, sets.Gears[gear], controls);
                memory.Remember(key, behaviour);
            }

            behaviours.Add(behaviour);
        }

        return new MatrixEntry(number, AssemblyBehaviour.Of(behaviours.MoveToImmutable()), seen.Whole);
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

/// <summary>A network with the gears that were asked for so far. For use by several threads.</summary>
internal sealed class SolvedNetwork
{
    private readonly Lazy<AssemblySolver>? solver;
    private readonly (SolvedGear State, ImmutableArray<ClutchControls> Controls)?[] gears;

    public SolvedNetwork(Network network, ImmutableArray<GearInputs> inputs)
    {
        solver = new Lazy<AssemblySolver>(() => new AssemblySolver(Plan.Of(network), inputs), LazyThreadSafetyMode.None);
        gears = new (SolvedGear, ImmutableArray<ClutchControls>)?[inputs.Length];
    }

    public SolvedNetwork(SolvedAssembly solved) => gears = [.. solved.Gears.Select(gear => (gear, Controls(gear)))];

    private static ImmutableArray<ClutchControls> Controls(SolvedGear gear) => UnitJudge.ControlsOf(gear.Solution, new Ways(gear.Solution));

    /// <summary>A gear, solved once.</summary>
    public (SolvedGear State, ImmutableArray<ClutchControls> Controls) Solve(int gear)
    {
        lock (gears)
        {
            if (gears[gear] is { } known) return known;
            var state = solver!.Value.Solve(gear);
            var made = (state, Controls(state));
            gears[gear] = made;
            return made;
        }
    }
}

/// <summary>Joints laid together, each combination of its parts once.</summary>
internal sealed class JointStacks(Unit unit)
{
    private readonly Dictionary<object, OneJoint> joints = unit.Joints.ToDictionary(
        object (joint) => joint,
        joint => new OneJoint(
            [.. joint.Sheets.Prepend(joint.Upper).Append(joint.Lower).Select(use => unit.Parts.IndexOf(unit.FindPart(use.Name)!))], []),
        ReferenceEqualityComparer.Instance);

    /// <summary>A joint of an assembly, laid together.</summary>
    public StackedJoint Of(Assembly assembly, Joint joint)
    {
        var (parts, stacks) = joints[joint];
        var key = new JointParts([.. parts.Select(part => assembly.Revisions[part])]);
        if (!stacks.TryGetValue(key, out var stack)) stacks[key] = stack = JointStacker.Stack(assembly, joint, static (_, _) => { });
        return stack;
    }

    private sealed record OneJoint(int[] Parts, Dictionary<JointParts, StackedJoint> Stacks);

    private readonly record struct JointParts(Revision[] Revisions)
    {
        public bool Equals(JointParts other)
        {
            for (var i = 0; i < Revisions.Length; i++)
            {
                if (!ReferenceEquals(Revisions[i], other.Revisions[i])) return false;
            }

            return true;
        }

        public override int GetHashCode()
        {
            var hash = 0;
            foreach (var revision in Revisions) hash = (hash * 31) + System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(revision);
            return hash;
        }
    }
}

/// <summary>The matched sets that an assembly is held against, with their gears.</summary>
/// <param name="Key">The same number for the same sets.</param>
/// <param name="Reference">The sets.</param>
/// <param name="Gears">Each gear of theirs.</param>
internal sealed record Nearest(UInt128 Key, Reference Reference, ImmutableArray<ReferenceBasis> Gears);

/// <summary>Finds the matched sets that share most parts with an assembly; each combination of sets is made ready once.</summary>
internal sealed class NearestSets(MatrixSpace space, UnitJudge judge)
{
    private readonly Dictionary<UInt128, Nearest> known = [];
    private readonly ByteList bytes = new();

    /// <summary>For each set, part and revision that is tried, whether the set has that revision.</summary>
    private readonly bool[][][] has =
        [.. judge.Matched.Select(set => space.Choices.Select((tried, part) => tried.Select(revision => ReferenceEquals(revision, set.Network.Assembly.Revisions[part])).ToArray()).ToArray())];

    private readonly int[] shared = new int[judge.Matched.Length];

    /// <summary>The sets nearest to an assembly.</summary>
    /// <param name="digits">Which of the revisions tried it has, part by part.</param>
    public Nearest Of(int[] digits)
    {
        var most = 0;
        for (var set = 0; set < has.Length; set++)
        {
            var count = 0;
            for (var part = 0; part < digits.Length; part++) count += has[set][part][digits[part]] ? 1 : 0;
            shared[set] = count;
            most = Math.Max(most, count);
        }

        bytes.Clear();
        for (var set = 0; set < has.Length; set++)
        {
            if (shared[set] == most) bytes.Add(set);
        }

        var key = Fingerprints.Of(bytes.Written);
        if (known.TryGetValue(key, out var nearest)) return nearest;
        var reference = new Reference([.. judge.Matched.Where((_, set) => shared[set] == most)]);
        return known[key] = new Nearest(key, reference, [.. space.Unit.Gears.Select((_, gear) => judge.BasisOf(reference, gear))]);
    }
}
