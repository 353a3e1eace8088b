using System.Collections.Concurrent;
using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Studies.Faults;
using Circuits.Studies.Matrix;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// Works out what faults do, gear by gear. A gear in which solver and judge see the same as in one before is not solved again: many faults touch
/// only what a gear keeps shut, and many pairs of faults are alike.
/// </summary>
public sealed class EffectSolver
{
    private const int MostGears = 1 << 18;

    private readonly UnitJudge judge;
    private readonly Assembly sound;
    private readonly Reference reference;
    private readonly ImmutableArray<ImmutableArray<ReferenceGear>> against;
    private readonly ImmutableArray<GearState> gears;
    private readonly NameNumbers names = new();
    private readonly ConcurrentDictionary<object, int> elements = SeenFlow.Numbers();
    private readonly ConcurrentDictionary<UInt128, GearEffect> known = new();
    private readonly ConcurrentDictionary<UInt128, ImmutableArray<GearEffect>> changed = new();
    private readonly bool timesChanges;
    private ImmutableArray<Fault> faults;
    private ImmutableArray<ImmutableArray<GearEffect>> singles;
    private int asked;
    private int solved;

    /// <summary>A solver for the faults of one assembly.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="sound">The assembly without faults; what clutches need is what the nearest matched sets give them.</param>
    /// <param name="timesChanges">Whether what is felt of changes of gear is left to <see cref="WithChanges"/>; else it is told from the openings that clutches are metered by.</param>
    public EffectSolver(UnitJudge judge, Assembly sound, bool timesChanges = false)
    {
        this.judge = judge;
        this.sound = sound;
        this.timesChanges = timesChanges && judge.TimesChanges;
        gears = judge.Unit.Gears;
        reference = judge.ReferenceFor(sound);
        against = [.. gears.Select((_, index) => judge.GearsOf(reference, index))];
        Sound = Solve([sound], 1)[0];
    }

    /// <summary>The unit.</summary>
    public Unit Unit => judge.Unit;

    /// <summary>The judge of the unit.</summary>
    public UnitJudge Judge => judge;

    /// <summary>The assembly without faults.</summary>
    public Assembly Assembly => sound;

    /// <summary>What it does, gear by gear.</summary>
    public ImmutableArray<GearEffect> Sound { get; }

    /// <summary>How many gears were asked for.</summary>
    public int Asked => asked;

    /// <summary>How many of them were solved; the rest were known.</summary>
    public int Solved => solved;

    /// <summary>Whether gears that were solved before are solved again; to measure what remembering them saves.</summary>
    public bool Forgets { get; init; }

    /// <summary>Every single fault that the assembly may have.</summary>
    public ImmutableArray<Fault> Faults => faults.IsDefault ? faults = FaultLibrary.Of(sound) : faults;

    /// <summary>What each of <see cref="Faults"/> does, gear by gear; worked out once.</summary>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public ImmutableArray<ImmutableArray<GearEffect>> Singles(int threads, CancellationToken stop = default) => singles.IsDefault
        ? singles = Solve([.. Faults.Select(fault => fault.In(sound))], threads, stop)
        : singles;

    /// <summary>What assemblies do, gear by gear.</summary>
    /// <param name="assemblies">The assemblies: the sound one with changes.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public ImmutableArray<ImmutableArray<GearEffect>> Solve(IReadOnlyList<Assembly> assemblies, int threads, CancellationToken stop = default) =>
        Solve(assemblies.Count, index => assemblies[index], static (_, _, _) => false, [.. Enumerable.Range(0, gears.Length)], threads, stop);

    /// <summary>What assemblies do with what is felt on the way into gears that are as they should be, which takes many times as long to work out.</summary>
    /// <param name="solved">The assemblies, and what they do in their gears.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="progress">Told how many are done, by one thread at a time.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <exception cref="OperationCanceledException">It was broken off.</exception>
    public ImmutableArray<ImmutableArray<GearEffect>> WithChanges(
        IReadOnlyList<(Assembly Assembly, ImmutableArray<GearEffect> Effects)> solved, int threads, Action<int>? progress, CancellationToken stop)
    {
        if (!timesChanges) return [.. solved.Select(each => each.Effects)];
        var made = new ImmutableArray<GearEffect>[solved.Count];
        var (gate, done) = (new Lock(), 0);
        Parallel.For(
            0, made.Length, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop }, () => new Worker(this),
            (i, _, worker) =>
            {
                made[i] = worker.WithChanges(solved[i].Assembly, solved[i].Effects);
                lock (gate) progress?.Invoke(++done);
                return worker;
            },
            static _ => { });
        return [.. made];
    }

    /// <summary>What assemblies do, gear by gear; one that is refused gear by gear is given up at once.</summary>
    /// <param name="count">How many assemblies there are.</param>
    /// <param name="assembly">An assembly by its number.</param>
    /// <param name="refuses">Whether an assembly, by its number, is refused for what it does in a gear; the gears before it in the order are known.</param>
    /// <param name="order">The order in which gears are solved.</param>
    /// <param name="threads">How many threads may work; the answer is the same.</param>
    /// <param name="stop">Breaks it off.</param>
    /// <returns>For each assembly its effects, or the default when it was refused.</returns>
    internal ImmutableArray<ImmutableArray<GearEffect>> Solve(
        int count, Func<int, Assembly> assembly, Func<int, int, GearEffect?[], bool> refuses, ImmutableArray<int> order, int threads, CancellationToken stop)
    {
        var effects = new ImmutableArray<GearEffect>[count];
        if (threads <= 1 || count == 1)
        {
            var worker = new Worker(this);
            for (var i = 0; i < effects.Length; i++)
            {
                stop.ThrowIfCancellationRequested();
                effects[i] = worker.Solve(assembly(i), order, (gear, known) => refuses(i, gear, known));
            }
        }
        else
        {
            Parallel.For(
                0, effects.Length, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop }, () => new Worker(this),
                (i, _, worker) =>
                {
                    effects[i] = worker.Solve(assembly(i), order, (gear, known) => refuses(i, gear, known));
                    return worker;
                },
                _ => { });
        }

        return [.. effects];
    }

    /// <summary>What faults do in a gear when something else is commanded in it.</summary>
    /// <param name="candidates">Each candidate's faults.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="commands">The gear with other commands.</param>
    /// <returns>For each candidate, an effect for each of the commands.</returns>
    internal ImmutableArray<ImmutableArray<GearEffect>> SolveAs(
        ImmutableArray<ImmutableArray<Fault>> candidates, int gear, ImmutableArray<GearState> commands)
    {
        var answers = ImmutableArray.CreateBuilder<ImmutableArray<GearEffect>>(candidates.Length);
        var ways = new Ways();
        foreach (var some in candidates)
        {
            var network = NetworkBuilder.Build(sound.With(some));
            var plan = Plan.Of(network);
            answers.Add(
            [
                .. commands.Select(command =>
                {
                    var solution = new GearSolver(plan).FromRest(GearInputs.Of(network, command));
                    return EffectOf(solution, gear, ways, judge.FlowOf(network, _ => solution));
                }),
            ]);
        }

        return answers.MoveToImmutable();
    }

    /// <summary>What one thread works with.</summary>
    private sealed class Worker(EffectSolver owner)
    {
        private readonly JointStacks stacks = new(owner.Unit);
        private readonly ByteList bytes = new();
        private readonly Ways ways = new();

        public ImmutableArray<GearEffect> Solve(Assembly assembly, ImmutableArray<int> order, Func<int, GearEffect?[], bool> refuses)
        {
            var network = owner.Forgets ? NetworkBuilder.Build(assembly) : NetworkBuilder.BuildOpen(assembly, joint => stacks.Of(assembly, joint));
            ImmutableArray<GearInputs> inputs = [.. owner.gears.Select(gear => GearInputs.Of(network, gear))];
            var seen = SeenNetwork.Of(network, inputs, owner.names, bytes);

            // Another matched set is right by declaration, and so is not held against the sound assembly as a fault of it is.
            var isOther = assembly.Matched is not null && assembly.Matched != owner.sound.Matched;
            AssemblySolver? solver = null;
            FlowAnswers? flow = null;
            var effects = new GearEffect?[owner.gears.Length];
            foreach (var gear in order)
            {
                Interlocked.Increment(ref owner.asked);
                var key = KeyOf(gear, seen, assembly, isOther);
                if (owner.Forgets || !owner.known.TryGetValue(key, out var effect))
                {
                    Interlocked.Increment(ref owner.solved);
                    solver ??= new AssemblySolver(Plan.Of(network), inputs);
                    flow ??= owner.judge.FlowOf(network, solver.Answer);
                    effect = owner.EffectOf(solver.Answer(gear), gear, ways, flow);
                    if (owner.known.Count >= MostGears) owner.known.Clear();
                    if (!owner.Forgets) effect = owner.known.GetOrAdd(key, effect);
                }

                effects[gear] = effect;
                if (refuses(gear, effects)) return default;
            }

            return [.. effects.Select(effect => effect!)];
        }

        /// <summary>Effects with what is felt on the way into gears that are as they should be.</summary>
        public ImmutableArray<GearEffect> WithChanges(Assembly assembly, ImmutableArray<GearEffect> effects)
        {
            var network = NetworkBuilder.BuildOpen(assembly, joint => stacks.Of(assembly, joint));
            ImmutableArray<GearInputs> inputs = [.. owner.gears.Select(gear => GearInputs.Of(network, gear))];
            var seen = SeenNetwork.Of(network, inputs, owner.names, bytes);
            return owner.changed.GetOrAdd(KeyOf(-1, seen, assembly, false), _ =>
            {
                var solver = new AssemblySolver(Plan.Of(network), inputs);
                var felt = owner.judge.OnTheWay(network, solver.Answer, owner.reference, gear => effects[gear].Kind == FeelKind.AsItShould);
                return [.. effects.Select((effect, gear) => effect.Kind == FeelKind.AsItShould && felt[gear] is { } feel ? effect with { Feel = feel } : effect)];
            });
        }

        /// <summary>What a gear's answer hangs on: what is seen of it, stuck elements with it, and of the gears that it comes after.</summary>
        private UInt128 KeyOf(int gear, SeenNetwork seen, Assembly assembly, bool isOther)
        {
            bytes.Clear();
            bytes.Add(gear);
            bytes.Add(isOther ? 1 : 0);
            if (owner.judge.Mode == JudgeMode.Full)
            {
                // A spool that flow lets stand midway opens what the static answer has shut: all of the network counts in every gear.
                bytes.Add(seen.Whole);
                SeenFlow.Add(assembly, owner.elements, bytes);
                return Fingerprints.Key(bytes.Written);
            }

            for (var (at, hops) = (gear, 0); at >= 0 && hops <= owner.gears.Length; at = AssemblySolver.Before(owner.gears, at), hops++) bytes.Add(seen.Gears[at]);
            return Fingerprints.Key(bytes.Written);
        }
    }

    /// <summary>What a solved gear comes to.</summary>
    /// <param name="solution">Its state.</param>
    /// <param name="gear">Its number.</param>
    /// <param name="ways">Looks for where its clutches are metered; the asking thread's own.</param>
    /// <param name="flow">What flows at the unit's conditions, or null.</param>
    internal GearEffect EffectOf(GearSolution solution, int gear, Ways ways, FlowAnswers? flow)
    {
        var report = judge.Felt(new SolvedGear(gears[gear], solution, []), gear, reference, against[gear], timesChanges ? null : ways, flow);
        return new GearEffect(
            FeelOf(report), [.. report.Clutches.Select(clutch => clutch.Strength)],
            [.. Unit.Taps.Select(tap => solution.Network.FindNode(tap.At.Name) is var node and >= 0 ? Math.Max(0, Reading(node)) : (double?)null)]);

        // A gauge is read with the engine running: at the first condition that judges gears.
        double Reading(int node) => flow?.In(gear, 0) is { Converged: true } settled ? settled.PressureAt(node) / 1e3 : solution.PressureAt(node);
    }

    /// <summary>What is felt; of a unit without a gear train, what its clutches let expect.</summary>
    private static Feel FeelOf(GearReport report) => report.Drive?.Feel ?? (report.Verdict == Verdict.AsCharted ? Feel.AsItShould : new Feel(
        report.Verdict switch
        {
            Verdict.Weak => FeelKind.Slips,
            Verdict.Lost => FeelKind.NoDrive,
            Verdict.NeverSettles or Verdict.DidNotConverge => FeelKind.NeverSettles,
            Verdict.Starved => FeelKind.Starved,
            Verdict.OverPressure => FeelKind.OverPressure,
            _ when report.Clutches.Any(clutch => clutch.Verdict == Verdict.Unwanted && clutch.Strength == ClutchState.Applied) => FeelKind.TieUp,
            _ => FeelKind.Drags,
        },
        report.Gear));
}
