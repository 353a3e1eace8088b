using System.Collections.Concurrent;
using Circuits.Model;

namespace Circuits.Judging;

/// <summary>
/// Writes down what flow and time see of an assembly's elements beyond what the static answer sees. Elements of different revisions count as the same
/// where one revision has them from the other, with all that is written of them, and as different where each writes its own.
/// </summary>
internal sealed class SeenFlow : IElementKinds<Revision>
{
    private readonly ConcurrentDictionary<object, int> numbers;
    private readonly ByteList bytes;

    private SeenFlow(ConcurrentDictionary<object, int> numbers, ByteList bytes) => (this.numbers, this.bytes) = (numbers, bytes);

    /// <summary>Numbers of elements, for assemblies that are held against one another.</summary>
    public static ConcurrentDictionary<object, int> Numbers() => new(ReferenceEqualityComparer.Instance);

    /// <summary>Adds what is seen of an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="numbers">Numbers of elements.</param>
    /// <param name="bytes">Takes what is written down.</param>
    public static void Add(Assembly assembly, ConcurrentDictionary<object, int> numbers, ByteList bytes)
    {
        var seen = new SeenFlow(numbers, bytes);
        foreach (var revision in assembly.Revisions) seen.Each(revision);
    }

    public void Passages(Revision revision) => Add(revision.Passages.Where(passage => passage.Volume is not null || passage.Length is not null || passage.Section is not null));

    public void Openings(Revision revision) => Add(revision.Openings.Where(opening => opening.Shape is Shape.Slot or Shape.Hole { Depth: not null }));

    public void Balls(Revision revision) => Add(revision.Balls);

    public void Valves(Revision revision) => Add(revision.Valves);

    public void Regulators(Revision revision) => Add(revision.Regulators);

    public void Solenoids(Revision revision) => Add(revision.Solenoids);

    public void Lever(Revision revision) { } // its ports are links, which the static answer sees as flow does

    public void Restrictions(Revision revision) => Add(revision.Restrictions.Where(restriction => restriction.Shape is Shape.Slot or Shape.Gap or Shape.Hole { Depth: not null }));

    public void Leaks(Revision revision) => Add(revision.Leaks);

    public void Screens(Revision revision) => Add(revision.Screens);

    public void Accumulators(Revision revision) => Add(revision.Accumulators);

    public void Clutches(Revision revision) => Add(revision.Clutches);

    private void Add<T>(IEnumerable<T> elements)
        where T : class
    {
        var count = 0;
        foreach (var element in elements)
        {
            bytes.Add(numbers.GetOrAdd(element, static (_, all) => all.Count, numbers));
            count++;
        }

        bytes.Add(count);
    }
}
