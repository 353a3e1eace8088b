using Circuits.Model;

namespace Circuits.Networks;

/// <summary>Pairs of nodes that something joins which nothing moves, in a network whose openings alone are laid yet.</summary>
/// <param name="draft">The network.</param>
internal sealed partial class FixedWays(Draft draft) : IElementKinds<Revision>
{
    private readonly List<(int A, int B)> pairs = new(draft.Edges.Count);

    /// <summary>The pairs, those of openings first, then part by part.</summary>
    /// <param name="draft">The network.</param>
    public static List<(int A, int B)> Of(Draft draft)
    {
        var ways = new FixedWays(draft);
        foreach (var edge in draft.Edges)
        {
            if (edge.Gate.Kind == GateKind.Open && edge.Kind == LinkKind.Opening) ways.pairs.Add((edge.A, edge.B));
        }

        foreach (var (_, revision) in draft.Parts) ways.Each(revision);
        return ways.pairs;
    }

    public void Passages(Revision revision) { } // what they touch, openings join

    public void Openings(Revision revision) { } // laid by then

    public void Balls(Revision revision) { } // shut what they lie on

    public void Valves(Revision revision) { } // move

    public void Regulators(Revision revision) { } // shut

    public void Solenoids(Revision revision) { } // switch

    public void Lever(Revision revision) { } // moves

    public void Leaks(Revision revision) { } // are none that anybody meant

    public void Accumulators(Revision revision) { } // let nothing through

    public void Clutches(Revision revision) { } // let nothing through

    private void Join(PassageUse a, PassageUse b)
    {
        var (one, two) = (draft.Passages.GetValueOrDefault(a.Name, -1), draft.Passages.GetValueOrDefault(b.Name, -1));
        if (one > 0 && two > 0) pairs.Add((one, two));
    }
}
