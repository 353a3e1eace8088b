using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Passages(Assembly assembly) => AddAll(Between(assembly));

    /// <summary>
    /// Leaks between passages of one casting that open near each other on a joint, and between those that the file declares neighbours. Passages of
    /// one circuit do each other no harm.
    /// </summary>
    private static IEnumerable<Fault> Between(Assembly assembly)
    {
        var settings = assembly.Unit.Faults;
        var known = new Dictionary<PassageName, Passage>();
        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            foreach (var passage in revision.Passages) known[new PassageName(part.Name, passage.Name)] = passage;
        }

        foreach (var pair in settings.Neighbours)
        {
            if (known.TryGetValue(pair.A.Name, out var a) && known.ContainsKey(pair.B.Name)) yield return Leak(assembly, pair.A.Name, pair.B.Name, a);
        }

        foreach (var (part, revision) in FaultLibrary.Fitted(assembly))
        {
            ImmutableArray<ImmutableArray<Spot>> spots = [.. revision.Passages.Select(passage => Spots(assembly.Unit, passage))];
            for (var i = 0; i < revision.Passages.Length; i++)
            {
                for (var j = i + 1; j < revision.Passages.Length; j++)
                {
                    var (a, b) = (revision.Passages[i], revision.Passages[j]);
                    if (a.Circuit == b.Circuit || !AreNear(spots[i], spots[j], settings.Near.Millimetres)) continue;
                    yield return Leak(assembly, new PassageName(part.Name, a.Name), new PassageName(part.Name, b.Name), a);
                }
            }
        }
    }

    private static Fault Leak(Assembly assembly, PassageName a, PassageName b, Passage first)
    {
        if (b < a) (a, b) = (b, a);
        return new Fault(
            FaultKind.PassagesLeak, $"{a}~{b}", Phrase.Of($"oil crosses between {a} and {b}"), first.Place, 0,
            [new AddLeak(a.Part, a, b, assembly.Unit.Faults.PassageLeak, first.Place)]);
    }

    private static bool AreNear(ImmutableArray<Spot> a, ImmutableArray<Spot> b, double near)
    {
        foreach (var one in a)
        {
            foreach (var other in b)
            {
                if (one.Joint == other.Joint && Math.Sqrt(Math.Pow(one.X - other.X, 2) + Math.Pow(one.Y - other.Y, 2)) <= near) return true;
            }
        }

        return false;
    }

    private static ImmutableArray<Spot> Spots(Unit unit, Passage passage) =>
    [
        .. from use in passage.Locations
           from location in unit.Joints.First(joint => joint.Name == use.Joint).Locations
           where location.Id == use.Location && location.X is not null && location.Y is not null
           select new Spot(use.Joint, location.X!.Value, location.Y!.Value),
    ];

    private readonly record struct Spot(string Joint, double X, double Y);
}
