using System.Collections.Concurrent;
using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;

namespace Circuits.Studies.Matrix;

/// <summary>
/// What the threads of one matrix learn from one another. Bounded: what is forgotten is worked out again. Keeps no object of
/// its own for an answer, and one for answers alike: collections have to look after each that is kept.
/// </summary>
internal sealed class MatrixMemory
{
    private const int MostGears = 1 << 17;

    /// <summary>Assemblies whose changes are kept.</summary>
    private const int MostChanges = 1 << 14;

    /// <summary>Parts of the memory that threads look into without getting into each other's way; a power of two.</summary>
    private const int Parts = 16;

    /// <summary>For each key the answer, or the question while it is being worked out.</summary>
    private readonly Dictionary<UInt128, object>[] gears = new Dictionary<UInt128, object>[Parts];

    // Foreign oil that comes in by more ways between the same circuits is no other behaviour, but another number.
    private readonly ConcurrentDictionary<(UInt128 Fingerprint, int CrossFeeds), GearBehaviour> alike = new();
    private readonly ConcurrentDictionary<UInt128, Lazy<ImmutableArray<ChangeBehaviour>>> changes = new();
    private int count;

    public MatrixMemory()
    {
        for (var part = 0; part < Parts; part++) gears[part] = [];
    }

    /// <summary>Numbers of names.</summary>
    public NameNumbers Names { get; } = new();

    /// <summary>Numbers of elements.</summary>
    public ConcurrentDictionary<object, int> Elements { get; } = SeenFlow.Numbers();

    /// <summary>Networks that were solved before.</summary>
    public KeptNetworks Networks { get; } = new();

    /// <summary>The changes of gear of an assembly that are not good, worked out once for all that are alike.</summary>
    /// <param name="key">Everything that they depend on.</param>
    /// <param name="time">Times them.</param>
    public ImmutableArray<ChangeBehaviour> ChangesOf(UInt128 key, Func<ImmutableArray<ChangeBehaviour>> time)
    {
        if (changes.Count >= MostChanges) changes.Clear();
        return changes.GetOrAdd(key, static (_, time) => new Lazy<ImmutableArray<ChangeBehaviour>>(time), time).Value;
    }

    /// <summary>What a gear does, where it is known.</summary>
    /// <param name="key">Everything that the answer depends on.</param>
    /// <param name="question">Where it is not: the question, which may be another thread's already.</param>
    public GearBehaviour? Ask(UInt128 key, out AskedGear? question)
    {
        var part = PartOf(key);
        lock (part)
        {
            if (!part.TryGetValue(key, out var known)) part[key] = known = new AskedGear();
            else if (known is GearBehaviour answer)
            {
                question = null;
                return answer;
            }

            question = (AskedGear)known;
            return null;
        }
    }

    /// <summary>Keeps an answer.</summary>
    public void Keep(UInt128 key, GearBehaviour answer)
    {
        var part = PartOf(key);
        lock (part) part[key] = alike.GetOrAdd((answer.Fingerprint, answer.CrossFeeds), answer);
        if (Interlocked.Increment(ref count) % MostGears == 0) Forget();
    }

    private void Forget()
    {
        foreach (var part in gears)
        {
            lock (part) part.Clear();
        }

        alike.Clear();
    }

    private Dictionary<UInt128, object> PartOf(UInt128 key) => gears[(int)(key & (Parts - 1))];
}

/// <summary>
/// What a gear does, which one thread works out and the others wait for. A thread that waits must have answered everything that it took:
/// then no two wait for one another.
/// </summary>
internal sealed class AskedGear
{
    private readonly object gate = new();
    private volatile GearBehaviour? known;
    private bool isTaken;
    private int waiting;

    /// <summary>The answer; null while there is none.</summary>
    public GearBehaviour? Known => known;

    /// <summary>Takes the question, so that others leave it alone; false when it is taken or known.</summary>
    public bool Take()
    {
        lock (gate)
        {
            if (isTaken || known is not null) return false;
            return isTaken = true;
        }
    }

    /// <summary>Works out the answer to a question that was taken. When that fails another thread may take it.</summary>
    /// <param name="work">Works it out.</param>
    public GearBehaviour Answer(Func<GearBehaviour> work)
    {
        GearBehaviour? answer = null;
        try
        {
            return answer = work();
        }
        finally
        {
            lock (gate)
            {
                known = answer;
                isTaken = false;

                // Waking costs an object for each answer, which collections then have to look after; hardly any is waited for.
                if (waiting > 0) Monitor.PulseAll(gate);
            }
        }
    }

    /// <summary>Waits while another thread works it out.</summary>
    /// <returns>The answer; null when that thread failed.</returns>
    public GearBehaviour? Wait()
    {
        lock (gate)
        {
            waiting++;
            while (isTaken) Monitor.Wait(gate);
            waiting--;
            return known;
        }
    }
}
