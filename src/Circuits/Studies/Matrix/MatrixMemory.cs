using System.Collections.Concurrent;
using Circuits.Judging;

namespace Circuits.Studies.Matrix;

/// <summary>What the threads of one matrix learn from one another. Bounded: what is forgotten is worked out again.</summary>
internal sealed class MatrixMemory
{
    private const int MostGears = 1 << 17;

    private readonly ConcurrentDictionary<UInt128, AskedGear> gears = new();
    private int count;

    /// <summary>Numbers of names.</summary>
    public NameNumbers Names { get; } = new();

    /// <summary>Networks that were solved before.</summary>
    public KeptNetworks Networks { get; } = new();

    /// <summary>What a gear does: known, being worked out by another thread, or to be worked out.</summary>
    /// <param name="key">Everything that the answer depends on.</param>
    public AskedGear Ask(UInt128 key)
    {
        if (gears.TryGetValue(key, out var asked)) return asked;
        var mine = new AskedGear();
        asked = gears.GetOrAdd(key, mine);
        if (asked == mine && Interlocked.Increment(ref count) % MostGears == 0) gears.Clear();
        return asked;
    }
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
                Monitor.PulseAll(gate);
            }
        }
    }

    /// <summary>Waits while another thread works it out.</summary>
    /// <returns>The answer; null when that thread failed.</returns>
    public GearBehaviour? Wait()
    {
        lock (gate)
        {
            while (isTaken) Monitor.Wait(gate);
            return known;
        }
    }
}
