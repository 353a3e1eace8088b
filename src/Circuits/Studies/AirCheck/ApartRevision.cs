using Circuits.Model;

namespace Circuits.Studies.AirCheck;

/// <summary>A revision as it lies on the bench, without what lies on joints that are apart.</summary>
/// <param name="joints">The joints that are together.</param>
internal sealed class ApartRevision(HashSet<string> joints) : IElementKinds<Revision>
{
    private Revision? apart;

    /// <summary>The revision on the bench.</summary>
    /// <param name="revision">The revision in the vehicle.</param>
    /// <param name="joints">The joints that are together.</param>
    public static Revision Of(Revision revision, HashSet<string> joints)
    {
        var bench = new ApartRevision(joints) { apart = revision };
        bench.Each(revision);
        return bench.apart;
    }

    public void Passages(Revision revision) => apart = apart! with { Passages = [.. revision.Passages.Select(Apart)] };

    public void Openings(Revision revision) { } // lie between castings: where those are apart, their sheets are off

    public void Balls(Revision revision) { } // a seat at a location that its pocket no longer has is none

    public void Valves(Revision revision) { } // stay in their bores

    public void Regulators(Revision revision) { } // stay in their bores

    public void Solenoids(Revision revision) { } // stay plugged in

    public void Lever(Revision revision) { } // stays in its bore

    public void Restrictions(Revision revision) { } // are part of the casting

    public void Leaks(Revision revision) { } // are part of the casting

    public void Screens(Revision revision) { } // stay where they are fitted

    public void Accumulators(Revision revision) { } // stay in their bores

    public void Clutches(Revision revision) { } // stay with whatever has their passages

    private Passage Apart(Passage passage) => passage with { Locations = [.. passage.Locations.Where(use => joints.Contains(use.Joint))] };
}
