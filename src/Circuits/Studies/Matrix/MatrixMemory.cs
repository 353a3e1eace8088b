using System.Collections.Concurrent;
using Circuits.Judging;

namespace Circuits.Studies.Matrix;

/// <summary>What the threads of one matrix learn from one another. Bounded: what is forgotten is worked out again.</summary>
internal sealed class MatrixMemory
{
    private const int MostGears = 1 << 17;

    private readonly ConcurrentDictionary<UInt128, GearBehaviour> gears = new();
    private int count;

    /// <summary>Numbers of names.</summary>
    public NameNumbers Names { get; } = new();

    /// <summary>What a gear does that was judged before; null when none was.</summary>
    /// <param name="key">Everything that the answer depends on.</param>
    public GearBehaviour? Recall(UInt128 key) => gears.GetValueOrDefault(key);

    /// <summary>Remembers what a gear does.</summary>
    public void Remember(UInt128 key, GearBehaviour behaviour)
    {
        if (gears.TryAdd(key, behaviour) && Interlocked.Increment(ref count) % MostGears == 0) gears.Clear();
    }
}
